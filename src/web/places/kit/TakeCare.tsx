import type { KitKind } from './kinds.ts';

/** The usual caution about a kind of kit, where it can hurt somebody. */
export function TakeCare({ kind: { caution } }: { readonly kind: KitKind }) {
  if (caution === undefined) return null;
  return (
    <p className="kit-care">
      <strong>Take care</strong> {caution}
    </p>
  );
}
