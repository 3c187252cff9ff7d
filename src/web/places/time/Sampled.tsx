import { useEffect, useRef, useState } from 'react';
import type { SampledTiming, Share } from '../../../plan/timing/types.ts';
import { showNumber } from '../../../base/quantity.ts';
import { sayShare } from '../../../turnover/sheets/cueSheet.ts';
import { Button } from '../../parts/Button.tsx';
import { dayWorker } from '../../state/page.ts';
import { isDropped, type Called } from '../../workers/connect.ts';
import { useShot } from '../shot/shotContext.ts';

type Asked =
  | { readonly state: 'idle' | 'working' }
  | { readonly state: 'failed'; readonly says: string }
  | { readonly state: 'done'; readonly sampled: SampledTiming | undefined };

const ROWS: readonly (readonly [label: string, of: (sampled: SampledTiming) => Share | undefined])[] = [
  ['All meet', ({ meets }) => meets],
  ['In the frame', ({ inTheFrame }) => inTheFrame],
  ['Sharp', ({ inDepth }) => inDepth],
  ['In the memory', ({ inMemory }) => inMemory],
  ['All of it in one take', ({ all }) => all],
];

function Shares({ sampled }: { readonly sampled: SampledTiming }) {
  const { sampleCount, seedCount, takesAllowedCount } = sampled;
  return (
    <>
      <dl className="time-shares">
        {ROWS.map(([label, of]) => {
          const share = of(sampled);
          if (!share) return null;
          return (
            <div key={label}>
              <dt>{label}</dt>
              <dd>
                {sayShare(share.fraction)} <small>± {showNumber(100 * share.standardErrorFraction, 2)} %</small>
              </dd>
            </div>
          );
        })}
      </dl>
      <p>
        {sampleCount} takes drawn from seed {seedCount}; after ± stands one standard error.
        {takesAllowedCount !== undefined && ` Allow ${takesAllowedCount} takes for a good one, nine days in ten.`}
      </p>
    </>
  );
}

/** The shot rolled thousands of times by chance, when somebody asks. */
export function Sampled() {
  const { open, shotId, plan } = useShot();
  const [asked, setAsked] = useState<Asked>({ state: 'idle' });
  const running = useRef<Called<SampledTiming | undefined>>(undefined);
  // What was drawn for another plan says nothing of this one.
  useEffect(() => {
    setAsked({ state: 'idle' });
    return () => running.current?.cancel();
  }, [plan]);
  const ask = () => {
    setAsked({ state: 'working' });
    const called = dayWorker.call('sample', { written: open.written, shotId });
    running.current = called;
    called.answer.then(
      (sampled) => setAsked({ state: 'done', sampled }),
      (error: unknown) => {
        if (!isDropped(error)) setAsked({ state: 'failed', says: error instanceof Error ? error.message : String(error) });
      },
    );
  };
  return (
    <div className="time-sampled">
      <Button disabled={asked.state === 'working'} onClick={ask}>
        Roll it 4000 times by chance
      </Button>
      <div role="status">
        {asked.state === 'working' && <p>Rolling…</p>}
        {asked.state === 'failed' && <p>{asked.says}</p>}
        {asked.state === 'done' && (asked.sampled ? <Shares sampled={asked.sampled} /> : <p>Something it rests on is missing.</p>)}
      </div>
    </div>
  );
} // prettier-ignore
