// One request, one answer. Pure: runs in the browser as well.

import { readNetlist } from './netlist.mjs';
import { table } from './table.mjs';
import { survey } from './survey.mjs';
import { sufficient, revealed } from './failures.mjs';
import { isolatingSets, liveAt, judge } from './questions.mjs';

const OPERATIONS = {
  table: (panel, request) => table(panel, request),
  survey: (panel, request) => survey(panel, request),
  isolate: (panel, request) => isolatingSets(panel, request),
  failures: (panel, request) => sufficient(panel, request.index === undefined ? request : { ...request, condition: panel.intents[request.index].when }),
  revealed: (panel, request) => revealed(panel, request),
  live: (panel, request) => liveAt(panel, request.state ?? {}),
  intent: (panel, request) => judge(panel, request.index === undefined ? request.intent : panel.intents[request.index]),
};

/**
 * @param {{op:'table'|'survey'|'isolate'|'failures'|'revealed'|'live'|'intent', condition?: any, settled?: boolean, netlist:any, readings?:any, failures?:number, questions?:any[], limit?:number, target?:string[], isolators?:string[],
 *   state?:Record<string,string>, index?:number, intent?:any}} request
 * @returns {any}
 */
export function answer(request) {
  const operation = OPERATIONS[request?.op];
  if (operation === undefined) throw new Error(`operation ${request?.op} is not known`);
  return operation(readNetlist(request.netlist, request.readings), request);
}

/** A line of JSON in, a line of JSON out; an error is an answer too. @param {string} line @returns {string} */
export function answerLine(line) {
  try {
    return JSON.stringify(answer(JSON.parse(line)));
  } catch (error) {
    return JSON.stringify({ error: error.message });
  }
}
