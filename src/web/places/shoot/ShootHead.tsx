import { showNumber, showQuantity, type Shown } from '../../../base/quantity.ts';
import { textPath } from '../../../api/routes.ts';
import { writeClock } from '../../../document/write.ts';
import { Button } from '../../parts/Button.tsx';
import { Figure } from '../../parts/Figure.tsx';
import { StateWord, type Standing } from '../../parts/StateWord.tsx';
import { useLater } from '../../parts/useLater.ts';
import type { OpenShoot } from '../../state/contract.ts';
import { longTime } from '../../../turnover/longTime.ts';

export interface ShootHeadProps {
  readonly open: OpenShoot;
  readonly onNewShot: () => void;
  readonly onGo: (href: string) => void;
}

/** The day is drawn in a worker of its own, which is begun once the page stands. */
const REST_ms = 600;

const loadDaySentence = async () => {
  await new Promise((rested) => setTimeout(rested, REST_ms));
  return (await import('./DaySentence.tsx')).DaySentence;
};

/** When it is a wrap: its line is kept free until it is known, so that nothing moves when it comes. */
function DayTold({ open, onGo }: Pick<ShootHeadProps, 'open' | 'onGo'>) {
  const DaySentence = useLater(loadDaySentence);
  return <p className="shoot-day">{DaySentence && <DaySentence open={open} onGo={onGo} />}</p>;
}

/** "2027-03-09, call 07:30, meal 13:00, wrap 19:30". */
function dayLine({ shoot }: OpenShoot): string {
  const { place, day } = shoot.shoot;
  const clock = (word: string, dayTime_s: number | undefined) =>
    dayTime_s === undefined ? [] : [`${word} ${writeClock(dayTime_s)}`];
  return [
    ...(place === undefined ? [] : [place]),
    ...(day.date === undefined ? [] : [day.date]),
    ...clock('call', day.callTime_s),
    ...day.meals.flatMap((meal_s) => clock('meal', meal_s)),
    ...clock('wrap', day.wrapTime_s),
  ].join(', ');
}

function Total({ title, shown }: { readonly title: string; readonly shown: readonly Shown[] }) {
  return (
    <div className="shoot-total">
      <dt>{title}</dt>
      <dd>
        {shown.map((part) => (
          <Figure key={part.unit} {...part} size="big" />
        ))}
      </dd>
    </div>
  );
}

function Limits({ open }: { readonly open: OpenShoot }) {
  const { shortCount, tightCount, unknownCount } = open.plan.totals;
  const counts: readonly (readonly [Standing, number, string])[] = [
    ['short', shortCount, 'short'],
    ['tight', tightCount, 'tight'],
    ['unknown', unknownCount, 'not known'],
  ];
  const told = counts.filter(([, count]) => count > 0);
  return (
    <div className="shoot-total">
      <dt>Limits</dt>
      <dd className="shoot-limits">
        {told.map(([standing, count, word]) => (
          <StateWord key={standing} standing={standing} word={`${count} ${word}`} />
        ))}
        {told.length === 0 && <StateWord standing="spare" word="all to spare" />}
      </dd>
    </div>
  );
}

/** What is shot, where and when, and what the whole of it comes to. */
export function ShootHead({ open, onNewShot, onGo }: ShootHeadProps) {
  const { plan, id } = open;
  const { screenTime_s, takeCount, keptSize_B, saveTime_s } = plan.totals;
  const day = dayLine(open);
  return (
    <header className="shoot-head">
      <div className="shoot-name">
        <h1>{plan.title}</h1>
        {day !== '' && <p>{day}</p>}
      </div>
      <div className="shoot-tools no-print">
        <Button look="main" onClick={onNewShot}>
          New shot
        </Button>
        <a className="button plain" href={textPath(id)} download={`${id}.yaml`}>
          Download YAML
        </a>
      </div>
      {plan.shots.length > 0 && (
        <dl className="shoot-totals">
          <Total title="On screen" shown={longTime(screenTime_s)} />
          <Total title="Takes" shown={[{ number: showNumber(takeCount, 6), unit: '' }]} />
          <Total title="Kept" shown={[showQuantity('bytes', keptSize_B)]} />
          <Total title="Time to save" shown={longTime(saveTime_s)} />
          <Limits open={open} />
        </dl>
      )}
      {plan.shots.length > 0 && <DayTold open={open} onGo={onGo} />}
    </header>
  );
}
