/** The shot that an option of a verb names by its file and its id, as it is planned. */
import { Fault } from '../base/fault.ts';
import { nearestName } from '../base/nearest.ts';
import type { Written } from '../document/written.ts';
import { planShoot } from '../plan/plan.ts';
import { onOneLine } from '../turnover/lines.ts';
import { plannedShot, type PlannedShot } from '../turnover/measureAgainst.ts';
import { tellFilesBeside } from './filesBeside.ts';
import { readDocument, tellProblems } from './shootDocument.ts';
import { readShootSource } from './shootFile.ts';
import type { Terminal } from './terminal.ts';

export interface NamedShot {
  readonly written: Written;
  readonly planned: PlannedShot;
}

/** The shot that `SHOOT.yaml#shot` names, as it is planned, and the shoot as it is written. */
export async function shotNamed(
  text: string,
  input: AsyncIterable<Uint8Array>,
  terminal: Terminal,
): Promise<NamedShot> {
  const cut = text.lastIndexOf('#');
  const [file, id] = cut < 0 ? [text, ''] : [text.slice(0, cut), text.slice(cut + 1)];
  const where = `longsecond measure --shot ${onOneLine(text)}`;
  if (id === '' || file === '')
    throw new Fault({ code: 'measure.bad-shot', what: 'A shot is named by its file and its id', where, mend: 'Write them with a # between, such as --shot shoot.yaml#pour-1.' }); // prettier-ignore
  const source = await readShootSource(file, input);
  const { shoot, problems, written } = readDocument(source);
  await tellFilesBeside(file, shoot);
  if (problems.length > 0) tellProblems(source.name, problems, terminal);
  const planned = planShoot(shoot).shots.find((shot) => shot.id === id);
  if (planned) return { written, planned: plannedShot(shoot, planned) };
  const ids = Object.keys(shoot.shots);
  const near = nearestName(id, ids);
  throw new Fault({
    code: 'measure.unknown-shot',
    what: `There is no shot "${onOneLine(id)}"`,
    where,
    mend: near === undefined ? (ids.length === 0 ? 'This shoot has no shots yet.' : `The shots are ${ids.slice(0, 40).join(', ')}.`) : `Did you mean ${near}?`, // prettier-ignore
  });
}
