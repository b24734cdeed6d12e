export { DefinitionList, type DefinitionListProps, type Fact } from './definition-list.tsx';
export { PageHeader, type PageHeaderProps } from './page-header.tsx';
export { Panel, Section, type SectionProps } from './section.tsx';
export { PageTabs, type PageTab } from './tabs.tsx';
export { Timeline, type TimelineItem, type TimelineProps } from './timeline.tsx';
