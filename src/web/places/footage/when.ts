/** Times of files and clips as people on the set say them. */

export interface Clock {
  /** The zone of the shoot; absent for that of this device. */
  readonly timeZone: string | undefined;
  /** Seconds of its own, for telling the clip that was just saved from the one before. */
  readonly hasSeconds?: boolean;
}

/** "14:20", or with its day where that is not the day of `now`. */
export function whenWords(at: string, now: Date, { timeZone, hasSeconds = false }: Clock): string {
  const date = new Date(at);
  const day = new Intl.DateTimeFormat(undefined, { timeZone, day: 'numeric', month: 'short', year: 'numeric' });
  const clock = new Intl.DateTimeFormat(undefined, { timeZone, hour: '2-digit', minute: '2-digit', ...(hasSeconds && { second: '2-digit' }), hourCycle: 'h23' }); // prettier-ignore
  const isToday = day.format(date) === day.format(now);
  return isToday ? clock.format(date) : `${day.format(date)}, ${clock.format(date)}`;
}
