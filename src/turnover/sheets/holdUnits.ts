/** Where words on paper are not to be broken. */
const UNITS =
  'µs|ms|s|min|h|mm|cm|m|in|ft|fps|klx|lx|fc|kcd/m²|cd/m²|fL|px|dB|[kMGT]?B(?:/s)?|kW|W|A|V|°|stops?|pieces?|takes?|clear';

const NUMBER_AND_UNIT = new RegExp(`(\\d) (?=(?:${UNITS})(?![\\p{L}\\p{N}]))`, 'gu');

const SIZE = /(\d) × (?=\d)/g;

/** A number stays on the line of its unit, and a size on one line. */
export const holdUnits = (text: string): string =>
  text.replace(NUMBER_AND_UNIT, '$1\u00a0').replace(SIZE, '$1\u00a0×\u00a0');
