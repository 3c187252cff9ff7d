/** Something quiet to be said beside a field, by the id of its control, such as who else is writing in it. */
import { createContext, use } from 'react';

export type FieldMark = (id: string) => string | undefined;

const Context = createContext<FieldMark>(() => undefined);

export const FieldMarkProvider = Context.Provider;

export function useFieldMark(id: string): string | undefined {
  return use(Context)(id);
}
