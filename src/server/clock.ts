/** The time of day, as an argument. */

export interface Clock {
  readonly now: () => Date;
}
