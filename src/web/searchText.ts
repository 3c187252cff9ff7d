/** The part of an address after its question mark: every value is text, written so that a person can read it. */

/** Characters that mean nothing in this part of an address, and so can stand as they are. */
const PLAIN: Readonly<Record<string, string>> = {
  '%20': '+',
  '%2F': '/',
  '%3A': ':',
  '%2C': ',',
  '%3B': ';',
  '%40': '@',
  "'": '%27',
};

const encode = (text: string) => encodeURIComponent(text).replace(/%20|%2F|%3A|%2C|%3B|%40|'/g, (all) => PLAIN[all]!);

/** Reads "?stop=T8&exposureTime=1/2000+s"; of a name given twice the last counts. */
export function readSearch(search: string): Record<string, string> {
  return Object.fromEntries(new URLSearchParams(search));
}

/** Writes what `readSearch` reads back; empty for nothing, otherwise from the question mark on. */
export function writeSearch(values: Readonly<Record<string, unknown>>): string {
  const pairs = Object.entries(values).flatMap(([name, value]) =>
    typeof value === 'string' ? [`${encode(name)}=${encode(value)}`] : [],
  );
  return pairs.length === 0 ? '' : `?${pairs.join('&')}`;
}
