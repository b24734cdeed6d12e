export { Badge, type BadgeProps, type BadgeShape, type BadgeTone } from './badge.tsx';
export { Callout, type CalloutProps } from './callout.tsx';
export { EmptyState, type EmptyStateProps } from './empty-state.tsx';
export { Skeleton } from './skeleton.tsx';
export { toast, ToastRegion, type ToastContent } from './toast.tsx';
