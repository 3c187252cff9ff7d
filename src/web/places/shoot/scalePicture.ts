/** Makes a picture small enough for a board before it is sent: disks on a set are for clips. */
import { Fault } from '../../../base/fault.ts';
import { fitSize, LONGEST_SIDE_px, SMALL_B } from './boardPictures.ts';

const QUALITY = 0.85;

const unreadable = (name: string, cause?: unknown) =>
  new Fault({
    code: 'picture.unreadable',
    what: 'The picture cannot be read by this browser',
    where: name,
    mend: 'Save it as PNG, JPEG, WebP or GIF and choose it again.',
    cause,
  });

const toBlob = (canvas: HTMLCanvasElement, type: string) =>
  new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, type, QUALITY));

const EXTENSION: Readonly<Record<string, string>> = { 'image/jpeg': 'jpg', 'image/png': 'png', 'image/webp': 'webp' };

const renamed = (name: string, type: string) => `${name.replace(/\.[^.]*$/, '')}.${EXTENSION[type] ?? 'png'}`;

/**
 * The picture as it is to be sent: as it came where it is small in pixels and bytes, else at most 1600 px long. Throws
 * Fault `picture.unreadable`.
 */
export async function scalePicture(file: File): Promise<File> {
  const bitmap = await createImageBitmap(file).catch((cause: unknown) => {
    throw unreadable(file.name, cause);
  });
  const size = fitSize(bitmap);
  const isWithin = Math.max(bitmap.width, bitmap.height) <= LONGEST_SIDE_px;
  if (isWithin && file.size <= SMALL_B) return file;
  const canvas = document.createElement('canvas');
  canvas.width = size.width;
  canvas.height = size.height;
  const drawn = canvas.getContext('2d');
  if (!drawn) throw unreadable(file.name);
  drawn.imageSmoothingQuality = 'high';
  drawn.drawImage(bitmap, 0, 0, size.width, size.height);
  bitmap.close();
  // Photographs stay photographs; drawings keep their clear parts.
  const blob = await toBlob(canvas, file.type === 'image/jpeg' ? 'image/jpeg' : 'image/webp');
  if (!blob) throw unreadable(file.name);
  // A picture that was within the size and does not get smaller goes as it came.
  if (isWithin && blob.size >= file.size) return file;
  return new File([blob], renamed(file.name, blob.type), { type: blob.type });
}
