/** Pictures of board frames: which files are taken, and giving one to a frame or taking it away, as patches. */
import type { FileReply } from '../../../api/replies.ts';
import { writtenValueAt } from '../../../document/patch.ts';
import { isList, isRecord, type Written } from '../../../document/written.ts';
import type { PatchOperation } from '../../../plan/types.ts';
import { fileEntry, fileWith, nameFile } from '../../../document/namedFiles.ts';
import { freshId } from '../../../document/freshId.ts';

export const PICTURE_TYPES = ['image/png', 'image/jpeg', 'image/webp', 'image/gif'] as const;

export const isPicture = ({ type }: { readonly type: string }) => PICTURE_TYPES.some((each) => each === type);

/** "Tall glass, pour 2" of `tall_glass-pour_2.final.JPG`: a title to begin with. */
export function titleFromName(name: string): string {
  const words = name
    .replace(/\.[^.]*$/, '')
    .replaceAll(/[\s_.]+/g, ' ')
    .trim();
  return words === '' ? 'New frame' : [...words].slice(0, 80).join('');
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

export const LONGEST_SIDE_px = 1600;

/** A picture's size with its long side at most 1600 px, in whole pixels; never enlarged. */
export function fitSize({ width, height }: Size): Size {
  const scale = Math.min(1, LONGEST_SIDE_px / Math.max(width, height));
  return { width: Math.max(1, Math.round(width * scale)), height: Math.max(1, Math.round(height * scale)) };
}

/** Below this a picture goes as it is, whatever it is made of. */
export const SMALL_B = 600_000;

/** Every mention of a file by frames other than one. */
function isUsedElsewhere(written: Written, fileId: string, frameId: string): boolean {
  const board = writtenValueAt(written, '/board');
  if (!isRecord(board)) return false;
  return Object.entries(board).some(([id, frame]) => id !== frameId && isRecord(frame) && frame['picture'] === fileId);
}

const pictureAt = (written: Written, frameId: string): string | undefined => {
  const id = writtenValueAt(written, `/board/${frameId}/picture`);
  return typeof id === 'string' ? id : undefined;
};

/** The removal of the file that a frame shows, where no other does. */
export function releasePatch(written: Written, frameId: string, but?: string): readonly PatchOperation[] {
  const fileId = pictureAt(written, frameId);
  if (fileId === undefined || fileId === but || isUsedElsewhere(written, fileId, frameId)) return [];
  return writtenValueAt(written, `/files/${fileId}`) === undefined ? [] : [{ op: 'remove', path: `/files/${fileId}` }];
}

/** One edit that gives a frame a picture that was sent; the one it had before goes, if nothing else shows it. */
export function givePicturePatch(written: Written, frameId: string, file: FileReply): readonly PatchOperation[] {
  const { id: fileId, patch } = nameFile(written, file, 'picture');
  return [
    ...patch,
    { op: 'add', path: `/board/${frameId}/picture`, value: fileId },
    ...releasePatch(written, frameId, fileId),
  ];
}

export function takePicturePatch(written: Written, frameId: string): readonly PatchOperation[] {
  if (pictureAt(written, frameId) === undefined) return [];
  return [{ op: 'remove', path: `/board/${frameId}/picture` }, ...releasePatch(written, frameId)];
}

/** One edit that adds a frame for each picture, in their order, at the end of the board. */
export function framesOfPicturesPatch(written: Written, ids: readonly string[], files: readonly FileReply[]): readonly PatchOperation[] {
  const patch: PatchOperation[] = [];
  const frameIds: string[] = [];
  const fileIds = new Map<string, string>();
  const [frames, entries] = [writtenValueAt(written, '/board'), writtenValueAt(written, '/files')];
  const taken = {
    board: { ...(isRecord(frames) ? frames : {}) } as Record<string, Written>,
    files: { ...(isRecord(entries) ? entries : {}) } as Record<string, Written>,
  };
  for (const file of files) {
    let fileId = fileIds.get(file.sha256) ?? fileWith(written, file.sha256);
    if (fileId === undefined) {
      fileId = freshId(taken, 'picture', '/files');
      taken.files[fileId] = fileEntry(file);
      patch.push({ op: 'add', path: `/files/${fileId}`, value: fileEntry(file) });
    }
    fileIds.set(file.sha256, fileId);
    const frameId = freshId(taken, 'frame', '/board');
    taken.board[frameId] = {};
    frameIds.push(frameId);
    patch.push({ op: 'add', path: `/board/${frameId}`, value: { title: titleFromName(file.name), picture: fileId } });
  }
  if (isList(writtenValueAt(written, '/order/board'))) patch.push({ op: 'add', path: '/order/board', value: [...ids, ...frameIds] });
  return patch;
} // prettier-ignore
