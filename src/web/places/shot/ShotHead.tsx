import { Button } from '../../parts/Button.tsx';
import { Icon } from '../../parts/Icon.tsx';
import { Menu } from '../../parts/Menu.tsx';
import { StateWord } from '../../parts/StateWord.tsx';
import { standingOf } from './standing.ts';
import { useShot } from './shotContext.ts';

export interface ShotHeadProps {
  readonly onChooseShot: (shotId: string) => void;
}

/** Which shot this is, what happens in it, and the way to the others. */
export function ShotHead({ onChooseShot }: ShotHeadProps) {
  const { open, plan, shotId } = useShot();
  const { shots } = open.plan;
  const at = shots.findIndex(({ id }) => id === shotId);
  const [before, after] = [shots[at - 1], shots[at + 1]];
  const what = open.shoot.shots[shotId]?.action.what;
  const { counts } = standingOf(plan);
  return (
    <div className="shot-head">
      <div className="shot-switch">
        <p>
          Shot {plan.number} of {shots.length}
        </p>
        <div className="shot-steps no-print">
          <Button
            look="sign"
            disabled={!before}
            aria-label={before ? `Shot before: ${before.number} ${before.title}` : 'No shot before'}
            onClick={() => before && onChooseShot(before.id)}
          >
            <Icon name="back" />
          </Button>
          <Menu
            trigger={
              <Button look="sign" aria-label="All shots">
                <Icon name="down" />
              </Button>
            }
            items={shots.map((shot) => ({
              id: shot.id,
              label: `${shot.number}  ${shot.title}`,
              note: <StateWord {...standingOf(shot)} />,
              isCurrent: shot.id === shotId,
            }))}
            onChoose={onChooseShot}
          />
          <Button
            look="sign"
            disabled={!after}
            aria-label={after ? `Shot after: ${after.number} ${after.title}` : 'No shot after'}
            onClick={() => after && onChooseShot(after.id)}
          >
            <Icon name="forward" />
          </Button>
        </div>
      </div>
      <h1>{plan.title}</h1>
      {what !== undefined && <p className="shot-what">{what}</p>}
      <p className="shot-counts">
        {counts.map(({ standing, word }) => (
          <StateWord key={standing} standing={standing} word={word} />
        ))}
      </p>
    </div>
  );
}
