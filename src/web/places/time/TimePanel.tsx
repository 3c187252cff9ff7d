import { useState } from 'react';
import { sayShown, showNumber, showQuantity } from '../../../base/quantity.ts';
import { capital } from '../../../plan/day/words.ts';
import type { ShotTiming } from '../../../plan/timing/types.ts';
import { DOES_WORDS, sayOffset, sayPart, sayShare } from '../../../turnover/sheets/cueSheet.ts';
import { sayLong } from '../../../turnover/sheets/say.ts';
import { Button } from '../../parts/Button.tsx';
import { Panel } from '../../parts/Panel.tsx';
import { useScrolls } from '../../parts/useScrolls.ts';
import { useShot } from '../shot/shotContext.ts';
import { CueForm } from './CueForm.tsx';
import { Sampled } from './Sampled.tsx';
import { findPostPatch, meetsPatch, postPatch } from './timeEdits.ts';
import type { Reach } from './timeLayout.ts';
import { TimeStrip } from './TimeStrip.tsx';
import './time.css';

const NOT_KNOWN = 'not known';
const offset = (time_s: number | undefined) => (time_s === undefined ? NOT_KNOWN : sayOffset(time_s));

function Cues({ timing }: { readonly timing: ShotTiming }) {
  const { system } = useShot();
  const scrolls = useScrolls<HTMLDivElement>('Cues as a table');
  return (
    <div className="time-scroll" {...scrolls}>
      <table className="time-table">
        <caption className="hidden-text">Cues in the order in which they fire</caption>
        <thead>
          <tr>
            <th scope="col">Cue</th>
            <th scope="col">Signal, from the first</th>
            <th scope="col">Signal</th>
            <th scope="col">There and at rest</th>
            <th scope="col">Varies by</th>
            <th scope="col">1 ms late is</th>
            <th scope="col">1 cm more is</th>
          </tr>
        </thead>
        <tbody>
          {timing.cues.map((cue) => (
            <tr key={cue.id}>
              <th scope="row">
                {cue.title} <small>{cue.isApart ? 'need not meet the others' : DOES_WORDS[cue.does]}</small>
              </th>
              <td>
                <b>{offset(cue.afterFirst_s)}</b>
              </td>
              <td>{offset(cue.fire_s)}</td>
              <td>{offset(cue.rests_s)}</td>
              <td>{cue.spread_s === undefined ? NOT_KNOWN : sayShown(showQuantity('time', cue.spread_s, { digits: 2 }))}</td>
              <td>
                {cue.millisecondMoves_m === undefined ? '–' : sayShown(showQuantity('length', cue.millisecondMoves_m, { digits: 2, system }))}
                {cue.millisecondFrames !== undefined && <small>{showNumber(cue.millisecondFrames, 2)} frames</small>}
              </td>
              <td>{cue.centimetreDelays_s === undefined ? '–' : sayShown(showQuantity('time', cue.centimetreDelays_s, { digits: 2 }))}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
} // prettier-ignore

function MeetingWords({ timing }: { readonly timing: ShotTiming }) {
  const { meeting, cues } = timing;
  if (!meeting || cues.filter(({ isApart }) => !isApart).length < 2) return null;
  const { chanceFraction, wantedFraction, tolerance_s, toleranceFrames, dominant, dominantSpreadNeeded_s, isAssumed } = meeting;
  const most = cues.find(({ id }) => id === dominant);
  const frames = toleranceFrames === undefined ? '' : `, ${showNumber(toleranceFrames, 2)} frames`;
  return (
    <li>
      <b>{chanceFraction === undefined ? capital(NOT_KNOWN) : capital(sayShare(chanceFraction))}</b> of takes meet within {sayShown(showQuantity('time', tolerance_s))}
      {frames}; {sayShare(wantedFraction)} wanted.
      {most && ` ${most.title} varies most: ${sayShare(most.shareOfSpreadFraction)} of it.`}
      {dominantSpreadNeeded_s !== undefined && (chanceFraction ?? 1) < wantedFraction && ` It would do if that varied by ${sayShown(showQuantity('time', dominantSpreadNeeded_s, { digits: 2 }))}.`}
      {isAssumed && ' Nobody has measured every rig: film each with the camera thirty times.'}
    </li>
  );
} // prettier-ignore

function TriggerWords({ timing }: { readonly timing: ShotTiming }) {
  const { trigger } = timing;
  const { shotId, edits } = useShot();
  if (!trigger) return null;
  const { set, best, isFixed, comes_s, comesLow_s, comesHigh_s, wantedFraction } = trigger;
  const isWorse = best.caughtFraction > set.caughtFraction + 0.0005;
  return (
    <li>
      <b>{capital(sayShare(set.caughtFraction))}</b> of takes are kept whole, {sayShare(wantedFraction)} wanted; head lost {sayShare(set.headLostFraction)}, tail lost{' '}
      {sayShare(set.tailLostFraction)}. The trigger comes at {sayOffset(comes_s)}, between {sayOffset(comesLow_s)} and {sayOffset(comesHigh_s)} eight times in ten.{' '}
      {isFixed && isWorse && (
        <>
          At {sayPart(best.postTriggerFraction)} after it, {sayShare(best.caughtFraction)} would be.{' '}
          <Button look="quiet" onClick={() => edits.commit(() => postPatch(shotId, best.postTriggerFraction), `Kept after the trigger: ${sayPart(best.postTriggerFraction)}`)}>
            Set it so
          </Button>
        </>
      )}
      {isFixed && (
        <Button look="quiet" onClick={() => edits.commit((written) => findPostPatch(written, shotId), 'Kept after the trigger: left to be found')}>
          Let it be found
        </Button>
      )}
    </li>
  );
} // prettier-ignore

function MemoryWords({ timing }: { readonly timing: ShotTiming }) {
  const { memory } = timing;
  if (!memory) return null;
  const { recordTime_s, frameCount, partitionCount, trimmedFrameCount, trimmedSize_B, saveTime_s, waits_s = 0, rollsBeforeSaving } = memory;
  return (
    <li>
      The memory holds {sayShown(showQuantity('time', recordTime_s))}, {frameCount} frames{partitionCount > 1 && `, in each of ${partitionCount} parts`}; trimmed to {trimmedFrameCount} frames, a take weighs{' '}
      <b>{sayShown(showQuantity('bytes', trimmedSize_B))}</b>
      {saveTime_s !== undefined && ` and saves in ${sayLong(saveTime_s)}`}. {waits_s > 0 ? `The next roll waits ${sayLong(waits_s)} for it.` : 'Saving is done within the reset.'}
      {rollsBeforeSaving > 1 && ` ${rollsBeforeSaving} rolls fit before anything must be saved.`} Until a take is saved the memory holds its only copy.
    </li>
  );
} // prettier-ignore

function Safety({ timing }: { readonly timing: ShotTiming }) {
  const { open } = useShot();
  const { crew, kit } = open.shoot;
  const who = (id: string | undefined) => (id === undefined ? 'nobody named yet' : (crew[id]?.title ?? id));
  if (timing.safety.length === 0) return null;
  return (
    <section className="time-safety" aria-label="Before each take">
      <h3>Before each take</h3>
      <ol>
        {timing.safety.map(({ rig, arms, clears, disarm, shield }) => (
          <li key={rig}>
            <b>{kit.rigs[rig]?.title ?? rig}</b>: all clear called by {who(clears)}, armed by {who(arms)}.
            {shield !== undefined && ` ${shield}`}
            {disarm !== undefined && ` Made harmless: ${disarm}`}
          </li>
        ))}
      </ol>
      <p>
        Longsecond fires nothing: these times are for people and their controller. What must meet is fired by one
        controller, never each by a hand. Local codes and the person responsible on the set come first.
      </p>
    </section>
  );
}

export interface TimePanelProps {
  /** The form of cues and trigger is open. */
  readonly isForm: boolean;
  readonly onForm: (isForm: boolean) => void;
}

/** The shot in time: what fires when, what meets, and which part of the memory is kept. */
export function TimePanel({ isForm, onForm }: TimePanelProps) {
  const { plan, open, shotId, edits, follow } = useShot();
  const [reach, setReach] = useState<Reach>('action');
  const { timing } = plan;
  const form = (
    <Button look="quiet" aria-expanded={isForm} onClick={() => onForm(!isForm)}>
      {isForm ? 'Close the cues' : timing ? 'Change cues and trigger' : 'Write cues or a trigger'}
    </Button>
  );
  const cues = open.shoot.shots[shotId]?.cues ?? {};
  return (
    <Panel
      title="In time"
      className="in-time"
      aside={
        <>
          {timing?.trigger && (
            <Button look="quiet" aria-pressed={reach === 'memory'} onClick={() => setReach(reach === 'memory' ? 'action' : 'memory')}>
              {reach === 'memory' ? 'About the action' : 'All of the memory'}
            </Button>
          )}
          {form}
        </>
      }
    >
      {timing && (
        <>
          <TimeStrip
            timing={timing}
            reach={reach}
            arrivalOf={(id) => cues[id]?.arrival_s ?? 0}
            onMeets={(id, arrival_s, isDone) => (isDone ? edits.commit(() => meetsPatch(shotId, id, arrival_s), `${cues[id]?.title ?? id} arrives ${sayOffset(arrival_s)} after the meeting`) : edits.draft(() => meetsPatch(shotId, id, arrival_s)))}
            onPost={(post, isDone) => (isDone ? edits.commit(() => postPatch(shotId, post), `Kept after the trigger: ${sayPart(post)}`) : edits.draft(() => postPatch(shotId, post)))}
            onCancel={edits.cancel}
          />
          {timing.impossible.length > 0 && (
            <ul className="time-impossible">
              {timing.impossible.map(({ says, path }) => (
                <li key={says}>
                  <button type="button" onClick={() => follow(path)}>
                    {says}
                  </button>
                </li>
              ))}
            </ul>
          )}
          {timing.cues.length > 0 && <Cues timing={timing} />}
          <ul className="time-says">
            <MeetingWords timing={timing} />
            <TriggerWords timing={timing} />
            <MemoryWords timing={timing} />
          </ul>
          <Sampled />
          <Safety timing={timing} />
        </>
      )}
      {isForm && <CueForm />}
    </Panel>
  );
} // prettier-ignore
