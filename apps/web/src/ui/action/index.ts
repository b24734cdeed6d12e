export { Button, type ButtonLook, type ButtonProps } from './button.tsx';
export { ButtonLink, RowLink, TextLink } from './link.tsx';
export { Menu, type MenuAction, type MenuProps } from './menu.tsx';
