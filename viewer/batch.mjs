// Answers requests, one JSON object a line, on standard input, with one JSON object a line on standard output.

import { createInterface } from 'node:readline';
import { pathToFileURL } from 'node:url';
import { readNetlist } from './netlist.mjs';
import { table } from './table.mjs';
import { isolatingSets, liveAt, judge } from './questions.mjs';

const OPERATIONS = {
  table: (panel, request) => table(panel, request),
  isolate: (panel, request) => isolatingSets(panel, request),
  live: (panel, request) => liveAt(panel, request.state ?? {}),
  intent: (panel, request) => judge(panel, request.index === undefined ? request.intent : panel.intents[request.index]),
};

/** @param {any} request @returns {any} */
export function answer(request) {
  const operation = OPERATIONS[request?.op];
  if (operation === undefined) throw new Error(`operation ${request?.op} is not known`);
  return operation(readNetlist(request.netlist), request);
}

/** @param {string} line @returns {string} */
export function answerLine(line) {
  try {
    return JSON.stringify(answer(JSON.parse(line)));
  } catch (error) {
    return JSON.stringify({ error: error.message });
  }
}

async function serve() {
  for await (const line of createInterface({ input: process.stdin })) {
    if (line.trim() !== '') process.stdout.write(`${answerLine(line)}\n`);
  }
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) await serve();
