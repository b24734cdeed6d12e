/**
 * Menu: a button that opens a short list of further actions. Items that lose something are marked `danger`; an item
 * with `to` is a link. Keyboard, typeahead and focus come from react-aria.
 */
import { Button as PressButton, Menu as MenuList, MenuItem, MenuTrigger, Popover } from 'react-aria-components';
import { useNavigate } from '@tanstack/react-router';
import type { ReactNode } from 'react';
import './button.css';
import './menu.css';

export interface MenuAction {
  id: string;
  label: string;
  danger?: boolean;
  disabled?: boolean;
  to?: string;
  onAction?: () => void;
}

export interface MenuProps {
  label: ReactNode;
  /** Needed where the label is not words. */
  'aria-label'?: string;
  look?: 'plain' | 'quiet' | 'primary';
  actions: readonly MenuAction[];
}

export function Menu({ label, look = 'plain', actions, ...rest }: MenuProps) {
  const navigate = useNavigate();
  return (
    <MenuTrigger>
      <PressButton className={`button button-${look}`} {...rest}>
        {label}
        <span className="menu-mark" aria-hidden="true" />
      </PressButton>
      <Popover className="popover" placement="bottom end" offset={4}>
        <MenuList className="menu">
          {actions.map((action) => (
            <MenuItem
              key={action.id}
              id={action.id}
              className={action.danger ? 'menu-item menu-item-danger' : 'menu-item'}
              isDisabled={action.disabled ?? false}
              onAction={() => {
                if (action.to) void navigate({ to: action.to });
                action.onAction?.();
              }}
            >
              {action.label}
            </MenuItem>
          ))}
        </MenuList>
      </Popover>
    </MenuTrigger>
  );
}
