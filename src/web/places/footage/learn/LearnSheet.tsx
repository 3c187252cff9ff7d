import { lazy, Suspense } from 'react';
import { Sheet } from '../../../parts/Sheet.tsx';
import type { LearnBodyProps } from './LearnBody.tsx';

export interface LearnSheetProps extends LearnBodyProps {
  readonly isOpen: boolean;
  readonly onClose: () => void;
}

const LearnBody = lazy(() => import('./LearnBody.tsx').then(({ LearnBody: of }) => ({ default: of })));

/** What clips teach of the shoot, over the edge of the page. What works it out comes when it is asked for. */
export function LearnSheet({ isOpen, onClose, ...body }: LearnSheetProps) {
  return (
    <Sheet isOpen={isOpen} title="What clips teach" onClose={onClose}>
      {isOpen && (
        <Suspense fallback={<p role="status">One moment…</p>}>
          <LearnBody {...body} />
        </Suspense>
      )}
    </Sheet>
  );
}
