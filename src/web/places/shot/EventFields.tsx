import { lazy, Suspense, useState } from 'react';
import { parametersOf, type FilmedEvent } from '../../../laws/events/event.ts';
import { eventNamed } from '../../../laws/events/catalogue.ts';
import type { Written } from '../../../document/written.ts';
import type { InputField } from '../../../laws/law.ts';
import { eventOf, parameterKey } from '../../../plan/events.ts';
import { withDefaults } from '../../../plan/givens.ts';
import { said as sayShown } from '../../../turnover/words.ts';
import { Button } from '../../parts/Button.tsx';
import { Field } from '../../parts/Field.tsx';
import { Icon } from '../../parts/Icon.tsx';
import { QuantityField } from '../../parts/QuantityField.tsx';
import { Sheet } from '../../parts/Sheet.tsx';
import { stepWritten } from '../../parts/stepping.ts';
import { checkParameter, choosingPatch, completeParameter, droppingPatch, FILLED, figureWords, findEvent, parameterPatch, parameterPointer, showParameter, takingPatch, type FoundEvent } from './eventEdits.ts'; // prettier-ignore
import { fieldId, useShot } from './shotContext.ts';
import './event.css';

/** The library's own words are long and seldom read: their script comes when somebody asks for them. */
const EventSheet = lazy(() => import('./EventSheet.tsx').then(({ EventSheet: of }) => ({ default: of })));
const EventAbout = lazy(() => import('./EventAbout.tsx').then(({ EventAbout: of }) => ({ default: of })));

function ParameterField({ field, found }: { readonly field: InputField; readonly found: FoundEvent }) {
  const { shotId, edits, problemAt, system } = useShot();
  const key = parameterKey(field.name);
  const pointer = parameterPointer(shotId, field.name);
  const text = found.parameters[key] ?? '';
  const problem = problemAt(`${found.path}/parameters/${key}`);
  const wholeOf = (typed: string) => completeParameter(field, typed, text, system);
  const patchOf = (typed: string) => (written: Written) => parameterPatch(written, shotId, key, wholeOf(typed));
  return (
    <QuantityField
      key={pointer}
      id={fieldId(pointer)}
      label={field.title}
      text={text}
      placeholder={typeof field.default === 'number' ? sayShown(showParameter(field, field.default, system)) : ''}
      isGiven={found.holder === 'defaults'}
      note={field.note}
      {...(problem === undefined ? {} : { problem })}
      check={(typed) => checkParameter(field, typed, text, system)}
      step={stepWritten}
      onDraft={(typed) => edits.draft(patchOf(typed))}
      onCommit={(typed) => edits.commit(patchOf(typed), `${field.title}: ${wholeOf(typed) || 'as usual'}`)}
      onCancel={edits.cancel}
    />
  );
}

/** Takes the figures over, or drops the event. */
function EventButtons({ event, found }: { readonly event: FilmedEvent; readonly found: FoundEvent }) {
  const { open, shotId, edits, system } = useShot();
  const figures = eventOf(withDefaults(open.shoot, shotId).shot.action)?.figures;
  const taking = figures && takingPatch(open.written, shotId, figures, system);
  const words =
    figures &&
    (['action/duration', 'action/speed'] as const)
      .map((key) => figureWords(FILLED[key].kind, figures[FILLED[key].figure], system))
      .join(' and ');
  return (
    <div className="event-buttons">
      {taking && taking.length > 0 && (
        <>
          <p>
            Worked out: <b>{words}</b>
          </p>
          <Button
            onClick={() =>
              edits.commit((written) => takingPatch(written, shotId, figures, system), `${event.title}: ${words!} taken over`)
            }
          >
            Take these figures as mine
          </Button>
        </>
      )}
      {taking?.length === 0 && <p>Duration and speed are yours; the event no longer moves them.</p>}
      {found.holder === 'shot' ? (
        <Button
          look="quiet"
          onClick={() => edits.commit((written) => droppingPatch(written, shotId), `Without the event ${event.title}`)}
        >
          Without the event
        </Button>
      ) : (
        <p>Named by the shoot’s defaults.</p>
      )}
    </div>
  );
} // prettier-ignore

/** The chosen event: its figures as fields, what they come to, and what else the library knows of it. */
function Chosen({ event, found }: { readonly event: FilmedEvent; readonly found: FoundEvent }) {
  const { open, shotId, problemAt } = useShot();
  const [isAsked, setAsked] = useState(false);
  const remark = eventOf(withDefaults(open.shoot, shotId).shot.action)?.figures?.remark;
  const refused = problemAt(`${found.path}/parameters`);
  const fields = parametersOf(event);
  return (
    <div className="event-own">
      {fields.map((field) => (
        <ParameterField key={field.name} field={field} found={found} />
      ))}
      {refused !== undefined && (
        <p className="field-problem" role="alert">
          {refused}
        </p>
      )}
      {remark !== undefined && <p className="event-remark">{remark}</p>}
      <EventButtons event={event} found={found} />
      <details className="ask-more" onToggle={(toggle) => toggle.currentTarget.open && setAsked(true)}>
        <summary>About this event</summary>
        {isAsked && (
          <Suspense fallback={<p role="status">Opening…</p>}>
            <EventAbout event={event} />
          </Suspense>
        )}
      </details>
    </div>
  );
}

/** What happens: the event of the library that the action names, and its figures. */
export function EventFields() {
  const { open, shotId, edits, problemAt } = useShot();
  const [isOpen, setOpen] = useState(false);
  const found = findEvent(open.written, shotId);
  const event = found && eventNamed(found.id);
  const id = fieldId(`/shots/${shotId}/action/event`);
  const problem = found && problemAt(`${found.path}/event`);
  const said = event?.title ?? found?.id ?? 'choose an event';
  const choose = (next: FilmedEvent) => {
    edits.commit((written) => choosingPatch(written, shotId, next.id), `What happens: ${next.title}`);
    setOpen(false);
  };
  return (
    <>
      <Field
        id={id}
        label="What happens"
        {...(problem === undefined ? {} : { problem })}
        {...(found?.holder === 'defaults' ? { after: <span className="ask-origin">default</span> } : {})}
      >
        <button
          type="button"
          id={id}
          className={`field-input event-choose${found?.holder === 'shot' ? '' : ' is-given'}`}
          aria-label={`What happens: ${said}`}
          aria-haspopup="dialog"
          onClick={() => setOpen(true)}
        >
          <span>{said}</span>
          <Icon name="forward" />
        </button>
      </Field>
      {event && <Chosen key={event.id} event={event} found={found} />}
      <Sheet isOpen={isOpen} title="What happens" onClose={() => setOpen(false)}>
        <Suspense fallback={<p role="status">Opening the library…</p>}>
          <EventSheet chosen={event?.id} onChoose={choose} />
        </Suspense>
      </Sheet>
    </>
  );
} // prettier-ignore
