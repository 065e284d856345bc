// Answers requests, one JSON object a line, on standard input, with one JSON object a line on standard output.

import { createInterface } from 'node:readline';
import { answerLine } from './answer.mjs';

for await (const line of createInterface({ input: process.stdin })) {
  if (line.trim() !== '') process.stdout.write(`${answerLine(line)}\n`);
}
