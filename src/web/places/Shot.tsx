import { lazy, Suspense, useEffect, useMemo, useState } from 'react';
import type { Alternative, PatchOperation, Way } from '../../plan/types.ts';
import { AssumedMark } from '../parts/AssumedMark.tsx';
import { EmptyPlace } from '../parts/EmptyPlace.tsx';
import { MarginChart } from '../parts/MarginChart.tsx';
import { Notice } from '../parts/Notice.tsx';
import { Panel } from '../parts/Panel.tsx';
import { Sheet } from '../parts/Sheet.tsx';
import { TraceTree } from '../parts/TraceTree.tsx';
import { useLater } from '../parts/useLater.ts';
import type { OpenShoot } from '../state/contract.ts';
import { useUnits } from '../state/unitChoice.ts';
import { Alternatives } from './shot/Alternatives.tsx';
import { Answer } from './shot/Answer.tsx';
import { Ask } from './shot/Ask.tsx';
import { Cautions, Notes, RestsOn, ShotProblems } from './shot/Beneath.tsx';
import { chartRows, ghostsOf, worstOf } from './shot/chartRows.ts';
import { LifeClock } from './shot/LifeClock.tsx';
import { PicturePanels } from './shot/PicturePanel.tsx';
import { PlatesOf, ReferencesOwed } from './shot/PlateFields.tsx';
import { ShotClocks } from './shot/ShotClocks.tsx';
import { fieldId, ShotProvider, type ShotContext } from './shot/shotContext.ts';
import { ShotHead } from './shot/ShotHead.tsx';
import { traceNode } from './shot/traceNodes.ts';
import { useShotEdits } from './shot/useShotEdits.ts';
import { Ways } from './shot/Ways.tsx';
import './shot/shot.css';
import './shot/limitHelp.css';

/** Read now and then, and it names laws of the whole catalogue: its script comes when somebody asks. */
const LimitHelpBody = lazy(() => import('./shot/LimitHelpBody.tsx').then(({ LimitHelpBody: of }) => ({ default: of })));

const loadFootage = async () => (await import('./footage/ShotFootage.tsx')).ShotFootage;

const loadTimePanel = async () => (await import('./time/TimePanel.tsx')).TimePanel;

/** Drawings and figures of flicker are large, and only shots that are lit by lamps have them. */
const FlickerPanel = lazy(() => import('./flicker/FlickerPanel.tsx').then(({ FlickerPanel: of }) => ({ default: of })));

export interface ShotProps {
  readonly open: OpenShoot;
  readonly shotId: string;
  readonly onChooseShot: (shotId: string) => void;
  /** Goes to where something outside this shot is written; where that is no place, this place says where it is. */
  readonly onFollow?: (path: string) => boolean;
  /** Goes to another place without loading the page anew. */
  readonly onGo?: (href: string) => void;
}

const loadAnew = (href: string) => window.location.assign(href);

interface Said {
  readonly says: string;
  readonly canUndo: boolean;
}

/** What is written in the form of cues and trigger, which is put away until somebody wants it. */
const OF_CUES = /^\/shots\/[^/]+\/(cues|meeting|trigger|catch)(\/|$)/;

/** Puts the cursor into the field that writes at a path, or at the nearest path above it. */
function focusField(path: string): boolean {
  for (let at = path; at !== ''; at = at.slice(0, at.lastIndexOf('/'))) {
    const field = document.getElementById(fieldId(at));
    if (!field) continue;
    field.closest('details')?.setAttribute('open', '');
    field.focus();
    field.scrollIntoView({ block: 'center' });
    return true;
  }
  return false;
}

/** One shot: what it asks for, how every limit stands, what to set, and the ways to close what is short. */
export function Shot({ open, shotId, onChooseShot, onFollow, onGo = loadAnew }: ShotProps) {
  const plan = open.plan.shots.find(({ id }) => id === shotId);
  const edits = useShotEdits(open);
  const system = useUnits(open.shoot.shoot.units);
  const [chosen, setChosen] = useState<string>();
  const [pointed, setPointed] = useState<Way | Alternative>();
  const [traced, setTraced] = useState<string>();
  const [said, setSaid] = useState<Said>();
  const [helped, setHelped] = useState<string>();
  const [isCueForm, setCueForm] = useState(false);
  const TimePanel = useLater(loadTimePanel);
  const ShotFootage = useLater(loadFootage);
  useEffect(() => {
    setCueForm(false);
    setHelped(undefined);
    setChosen(undefined);
    setPointed(undefined);
    setTraced(undefined);
  }, [shotId]);
  const margins = plan?.margins;
  const rows = useMemo(() => chartRows(margins ?? [], system), [margins, system]);
  const ghosts = useMemo(() => pointed && ghostsOf(pointed.margins, system), [pointed, system]);

  if (!plan)
    return (
      <EmptyPlace title="No such shot" says="It may have been taken out or renamed. Choose another on the Shoot." />
    );

  const margin = plan.margins.find(({ id, stops }) => id === chosen && stops) ?? worstOf(plan.margins);
  const follow = (written: string) => {
    // What only the defaults say is shown, and overridden, in the shot's own field.
    const path = written.replace(/^\/defaults\//, `/shots/${shotId}/`);
    setTraced(undefined);
    setHelped(undefined);
    if (OF_CUES.test(path)) setCueForm(true);
    // The sheet gives the cursor back as it closes; only then can it go elsewhere.
    setTimeout(() => {
      if (focusField(path) || onFollow?.(path) === true) return;
      setSaid({
        says: `That is written in the shoot’s text, at ${path.split('/').slice(1).join(', ')}`,
        canUndo: false,
      });
    }, 0);
  };
  const apply = (patch: readonly PatchOperation[], title: string) => {
    edits.commit(() => patch, title);
    setPointed(undefined);
    setSaid({ says: `Applied: ${title}`, canUndo: true });
    // What was pressed is gone with what it closed: the cursor goes on from the limit.
    setTimeout(
      () => document.querySelector<HTMLElement>('.margin-line[aria-checked="true"]')?.focus({ preventScroll: true }),
      0,
    );
  };
  const trace = traced === undefined ? undefined : open.explain(shotId, traced);
  const context: ShotContext = {
    open,
    shotId,
    plan,
    system,
    edits,
    problemAt: (path) => {
      const found = open.problems.find((problem) => problem.path === path);
      return found && (found.near === undefined ? found.what : `${found.what}; did you mean ${found.near}?`);
    },
    follow,
    trace: (name) => {
      setHelped(undefined);
      setTraced(name);
    },
    go: onGo,
  };
  const helpedMargin = plan.margins.find(({ id }) => id === helped);

  return (
    <ShotProvider value={context}>
      <div className="shot">
        <div className="shot-ask">
          <div className="shot-top">
            <ShotHead onChooseShot={onChooseShot} />
            <ShotProblems />
          </div>
          <Ask />
        </div>
        <div className="shot-margins">
          <Panel
            className="margins"
            title="Margins"
            aside={
              <>
                in stops
                {plan.assumed.length > 0 && (
                  <a href="#rests-on" className="assumed-legend">
                    <AssumedMark /> rests on an assumption
                  </a>
                )}
              </>
            }
          >
            <MarginChart
              label={`Limits of ${plan.title}, in stops`}
              rows={rows}
              {...(ghosts ? { ghosts } : {})}
              {...(margin ? { chosen: margin.id } : {})}
              onChoose={setChosen}
              onFollow={follow}
              onHelp={setHelped}
            />
          </Panel>
          <div className="shot-beneath">
            <Cautions />
            {ShotFootage && <ShotFootage />}
            <Notes />
            <LifeClock />
            <PicturePanels />
            {TimePanel && <TimePanel isForm={isCueForm} onForm={setCueForm} />}
            {plan.flicker && (
              <Suspense fallback={null}>
                <FlickerPanel
                  shown={pointed && 'move' in pointed ? pointed : undefined}
                  onShow={setPointed}
                  onApply={(way) => apply(way.patch, way.title)}
                />
              </Suspense>
            )}
            <PlatesOf />
            <ReferencesOwed />
            <RestsOn />
          </div>
        </div>
        <div className="shot-answer">
          <Answer />
          <div className="shot-choices">
            {margin && (
              <Ways
                margin={margin}
                shown={pointed && 'move' in pointed ? pointed : undefined}
                onShow={setPointed}
                onApply={(way) => apply(way.patch, way.title)}
              />
            )}
            <Alternatives
              shown={pointed && !('move' in pointed) ? pointed : undefined}
              onShow={setPointed}
              onApply={({ patch, differs }) => apply(patch, differs)}
            />
          </div>
        </div>
        <div className="shot-clocks">
          <ShotClocks />
        </div>
      </div>
      <Sheet isOpen={trace !== undefined} title="Where this comes from" onClose={() => setTraced(undefined)}>
        {trace && <TraceTree root={traceNode(trace, system)} onFollow={follow} />}
      </Sheet>
      <Sheet isOpen={helpedMargin !== undefined} title={helpedMargin?.title ?? ''} onClose={() => setHelped(undefined)}>
        <Suspense fallback={<p role="status">Opening…</p>}>
          {helpedMargin && <LimitHelpBody margin={helpedMargin} />}
        </Suspense>
      </Sheet>
      {said && (
        <Notice
          says={said.says}
          {...(said.canUndo
            ? {
                action: {
                  label: 'Undo',
                  onPress: () => {
                    open.undo();
                    setSaid(undefined);
                  },
                },
              }
            : {})}
          onDismiss={() => setSaid(undefined)}
        />
      )}
    </ShotProvider>
  );
}
