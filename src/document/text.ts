/** A shoot from its text, YAML or JSON, with the place of every problem. */
import { keysOf } from './pointer.ts';
import type { Problem } from './problem.ts';
import { readShoot, type ShootReading } from './read.ts';
import type { Shoot } from './schema.ts';
import { migrate } from './versions.ts';
import { shareUnchanged, type Written } from './written.ts';
import { nodeAt, parseTree, placesIn, type Place, type TextNode } from './yamlTree.ts';

export interface ShootText extends ShootReading {
  /** The text as a JSON value, in the version it is written in. */
  readonly written: Written;
}

/** Problems of a key itself are shown at the key, others at the value. */
const AT_THE_KEY: ReadonlySet<string> = new Set(['key.unknown', 'id.malformed']);

type Placed = Problem & Place;

function placed(problem: Problem, root: TextNode, placeOf: (offset: number) => Place): Placed {
  const { node, entry } = nodeAt(root, keysOf(problem.path) ?? []);
  const isAtKey = entry !== undefined && (AT_THE_KEY.has(problem.code) || node.start === node.end);
  return { ...problem, ...placeOf(isAtKey ? entry.start : node.start) };
}

/**
 * Reads a shoot from text. Throws a Fault for what is malformed and must not be stored: `document.not-yaml`,
 * `.truncated`, `.anchors`, `.tags`, `.duplicate-key`, `.too-large`, `.too-deep`, `.newer-version`, `.not-a-shoot`.
 * All else is listed in `problems`, in the order of the text. Give what was written before to keep the identity of
 * all that did not change. `alsoFind` adds problems that only whoever plans with the shoot can see.
 */
export function readShootText(
  text: string,
  before?: Written,
  alsoFind: (shoot: Shoot) => readonly Problem[] = () => [],
): ShootText {
  const tree = parseTree(text);
  const written = before === undefined ? tree.written : shareUnchanged(before, tree.written);
  const { shoot, problems } = readShoot(migrate(written));
  const placeOf = placesIn(text);
  const inOrder = [...problems, ...alsoFind(shoot)]
    .map((problem) => placed(problem, tree.root, placeOf))
    .sort((a, b) => a.line - b.line || a.column - b.column);
  return { written, shoot, problems: inOrder };
}
