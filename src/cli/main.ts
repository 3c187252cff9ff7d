#!/usr/bin/env node
/** The `longsecond` command as it is installed: its verbs, and this process's arguments and streams. */
import { runCommand, type Verb } from './command.ts';
import { openTerminal } from './terminal.ts';

/** Exit code when what was asked for could not be written out. */
const OUTPUT_LOST = 74;

/** Each verb is one entry here and one file of verbs/. */
const VERBS: readonly Verb[] = [
  {
    name: 'day',
    says: 'when the day will end, nine days in ten, and what would end it sooner',
    load: async () => (await import('./verbs/day.ts')).setUpDay,
  },
  {
    name: 'flicker',
    says: 'a lamp’s light over time as it was measured, and what a camera sees of it',
    load: async () => (await import('./verbs/flicker.ts')).setUpFlicker,
  },
  {
    name: 'light',
    says: 'a photometric file, or the light of every set-up; finds lamps for what is lacking',
    load: async () => (await import('./verbs/light.ts')).setUpLight,
  },
  {
    name: 'measure',
    says: 'what a clip shows: flicker, exposure, focus, movement, action, against its plan',
    load: async () => (await import('./verbs/measure.ts')).setUpMeasure,
  },
  {
    name: 'plan',
    says: 'what to set for each shot, and how every limit stands',
    load: async () => (await import('./verbs/plan.ts')).setUpPlan,
  },
  {
    name: 'reckon',
    says: 'work out one law from numbers',
    load: async () => (await import('./verbs/reckon.ts')).setUpReckon,
  },
  {
    name: 'serve',
    says: 'open the screens in a browser, on this machine',
    load: async () => (await import('./verbs/serve.ts')).setUpServe,
  },
  {
    name: 'sheet',
    says: 'print shot cards, the plan or morning sheets',
    load: async () => (await import('./verbs/sheet.ts')).setUpSheet,
  },
];

const terminal = openTerminal(process.stdout, process.stderr, process.env);

for (const stream of [process.stdout, process.stderr]) {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    // A reader that stops early, such as head, is no failure.
    if (error.code === 'EPIPE') process.exit(process.exitCode ?? 0);
    if (stream === process.stdout) terminal.err(`Not done: the output could not be written: ${error.message}\n`);
    process.exit(OUTPUT_LOST);
  });
}

const exitCode = await runCommand(process.argv.slice(2), VERBS, terminal);
if (exitCode !== 0) process.exitCode = exitCode;
