/** Pictures dropped or pasted onto a part of the page, as handlers for its element. */
import { useState, type ClipboardEvent, type DragEvent } from 'react';

const filesIn = (data: DataTransfer) => [...data.files];

const carriesFiles = (event: DragEvent) => event.dataTransfer.types.includes('Files');

export interface Drop {
  readonly isOver: boolean;
  readonly handlers: {
    readonly onDragOver: (event: DragEvent) => void;
    readonly onDragLeave: (event: DragEvent) => void;
    readonly onDrop: (event: DragEvent) => void;
    readonly onPaste: (event: ClipboardEvent) => void;
  };
}

/** Takes what is dropped on or pasted into an element; the innermost such element gets it. */
export function useDrop(take: (files: readonly File[]) => void): Drop {
  const [isOver, setOver] = useState(false);
  return {
    isOver,
    handlers: {
      onDragOver: (event) => {
        if (!carriesFiles(event) || event.defaultPrevented) {
          setOver(false);
          return;
        }
        event.preventDefault();
        setOver(true);
      },
      onDragLeave: (event) => {
        if (!event.currentTarget.contains(event.relatedTarget as Node | null)) setOver(false);
      },
      onDrop: (event) => {
        setOver(false);
        if (!carriesFiles(event) || event.defaultPrevented) return;
        event.preventDefault();
        const files = filesIn(event.dataTransfer);
        if (files.length > 0) take(files);
      },
      onPaste: (event) => {
        const files = filesIn(event.clipboardData);
        if (files.length === 0 || event.defaultPrevented) return;
        event.preventDefault();
        take(files);
      },
    },
  };
}
