/**
 * Dialog: a short piece of work over the page, in the middle on a wide screen. Sheet: the same, risen from the lower edge on a
 * phone where the thumb is; on a wide screen it stands at the side. Both hold focus, close on Escape and give focus back.
 */
import { type ReactNode, useRef } from 'react';
import { Dialog as DialogBox, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { useMessages } from '../../messages/index.ts';
import { Button } from '../action/button.tsx';
import { LayerContext } from './layer.ts';
import './dialog.css';

export interface DialogProps {
  open: boolean;
  onClose: () => void;
  title: string;
  children: ReactNode;
}

function Overlay({ open, onClose, title, children, shape }: DialogProps & { shape: 'dialog' | 'sheet' }) {
  const { ui } = useMessages();
  const layer = useRef<HTMLDivElement>(null);
  return (
    <ModalOverlay
      ref={layer}
      className={`overlay overlay-${shape}`}
      isOpen={open}
      onOpenChange={(isOpen) => !isOpen && onClose()}
      isDismissable={shape === 'sheet'}
    >
      <Modal className={`overlay-box overlay-box-${shape}`}>
        <DialogBox className="overlay-content">
          <header className="overlay-head">
            <Heading slot="title" level={2}>
              {title}
            </Heading>
            <Button look="quiet" onClick={onClose}>
              {ui.close}
            </Button>
          </header>
          <div className="overlay-body">
            <LayerContext value={layer}>{children}</LayerContext>
          </div>
        </DialogBox>
      </Modal>
    </ModalOverlay>
  );
}

export function Dialog(props: DialogProps) {
  return <Overlay {...props} shape="dialog" />;
}

export function Sheet(props: DialogProps) {
  return <Overlay {...props} shape="sheet" />;
}
