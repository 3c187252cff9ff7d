import type { SheetProps } from './sheetProps.ts';
import { useLater } from './useLater.ts';

const loadBody = async () => (await import('./later/SheetBody.tsx')).SheetBody;

/** A sheet over the edge of the page for reading something in full; Escape puts it away. What shows it comes after the page. */
export function Sheet(props: SheetProps) {
  const SheetBody = useLater(loadBody);
  return SheetBody ? <SheetBody {...props} /> : null;
}
