#!/usr/bin/env node
/** The program: hands the terminal to main and ends the process with its code. */
import { stdin, stdout } from 'node:process';
import { createInterface } from 'node:readline/promises';
import { styleText } from 'node:util';
import type { Io } from './io.ts';
import { keepQuickTranslation } from './kernel-flags.ts';
import { main } from './main.ts';

const colours: Readonly<Record<string, Parameters<typeof styleText>[0]>> = {
  fail: ['red', 'bold'],
  caution: ['yellow', 'bold'],
  'not assessed': ['magenta'],
  pass: ['green'],
  heading: ['bold'],
  quiet: ['dim'],
};

const isTerminal = stdin.isTTY === true && stdout.isTTY === true;
const coloured = stdout.isTTY === true && !process.env.NO_COLOR;

const io: Io = {
  out: (text) => void process.stdout.write(text),
  err: (text) => void process.stderr.write(text),
  cwd: process.cwd(),
  ask: isTerminal
    ? async (question) => {
        const terminal = createInterface({ input: stdin, output: stdout });
        try {
          return await terminal.question(question);
        } finally {
          terminal.close();
        }
      }
    : null,
  isWatched: process.stderr.isTTY === true,
  paint: (text, style) => (coloured && colours[style] ? styleText(colours[style], text) : text),
};

// A reader that goes away (a pager that was quit, `| head`) is not a fault.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});

keepQuickTranslation();
process.exitCode = await main(process.argv.slice(2), io);
