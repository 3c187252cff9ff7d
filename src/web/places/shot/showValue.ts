/** Numbers of a plan put into the words and units of the set, as the command prints them too. */
export { numberWords as showNamed, said as saidShown, type NamedNumber as Numbered } from '../../../turnover/words.ts';
