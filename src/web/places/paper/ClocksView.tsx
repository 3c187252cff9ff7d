import type { ClocksBlock } from '../../../turnover/sheets/sheet.ts';

const WIDE = 1000;
const BAR = 9;
const BETWEEN = 34;

const wide = (fraction: number) => fraction * WIDE;

/** Both clocks of a shot: real time above, time on screen below, joined by lines that fan out. */
export function ClocksView({ block }: { readonly block: ClocksBlock }) {
  const { real, handles, screen, stretch, kept, action, threads, says } = block;
  const bar = ([from, to]: readonly [number, number], y: number, name: string) => (
    <rect className={name} x={wide(from)} y={y} width={wide(to - from)} height={BAR} />
  );
  return (
    <figure className="paper-clocks">
      <p className="paper-clock-real">
        <b>{real} on the set</b> {handles}
      </p>
      <svg viewBox={`0 0 ${WIDE} ${2 * BAR + BETWEEN}`} role="img" aria-label={says} preserveAspectRatio="none">
        <path className="paper-ruler" d={`M0 ${BAR / 2}H${WIDE}`} />
        {threads.map((thread, i) => (
          <path key={i} className="paper-thread" d={`M${wide(thread.real)} ${BAR}L${wide(thread.screen)} ${BAR + BETWEEN}`} />
        ))}
        {bar(kept, 0, 'paper-kept')}
        {bar(action, 0, 'paper-ink')}
        {bar([0, 1], BAR + BETWEEN, 'paper-ink')}
      </svg>
      <p className="paper-clock-screen">
        <b>{screen} on screen</b> <b>{stretch}</b>
      </p>
    </figure>
  );
} // prettier-ignore
