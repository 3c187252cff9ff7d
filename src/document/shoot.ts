/**
 * The shoot document for programs outside: read it, edit it in place, write values as people write them. All is pure
 * and synchronous; what cannot be read at all is thrown as a Fault, everything else is listed as problems.
 */
export { Fault } from '../base/fault.ts';
export { blankShootText } from './blank.ts';
export { shootJsonSchema } from './jsonSchema.ts';
export { applyPatch, invertPatch, pathsMeet, withParents, type Operation, type Patch } from './patch.ts';
export { showProblem, type Problem } from './problem.ts';
export { readShoot, type ShootReading } from './read.ts';
export { DOCUMENT_VERSION, type Shoot, type Shot } from './schema.ts';
export { readShootText, type ShootText } from './text.ts';
export { applySplices, editText, undoSplices, type Splice, type TextEdit } from './textEdit.ts';
export { fieldAt, writtenAt, writtenValue } from './write.ts';
export type { Written } from './written.ts';
