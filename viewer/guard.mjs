// Guards (over variables) and expressions (over variables and the network) as functions.
//
// A compiled guard is a function of the state's value indices. A compiled expression also takes the truth of the
// atoms: each network predicate that occurs is given a number once, and evaluated once per network.

/** @typedef {(values: Int32Array) => boolean} Guard */
/** @typedef {(values: Int32Array, truth: Uint8Array) => boolean} Expression */

export const NEVER = () => false;
export const ALWAYS = () => true;

const NETWORK_KEYS = ['energised', 'carries', 'closed', 'fed', 'single', 'joined', 'live', 'runs', 'short', 'quiet'];

/**
 * @param {any} json
 * @param {(name: string, value: string) => [number, number]} lookup variable and value to indices
 * @returns {Guard} constant guards are ALWAYS or NEVER themselves
 */
export function compileGuard(json, lookup) {
  return compile(json, lookup, key => { throw new Error(`"${key}" is not allowed in a guard over variables`); });
}

/**
 * @param {any} json
 * @param {(name: string, value: string) => [number, number]} lookup
 * @param {(key: string, json: any) => number} intern gives the number of an atom
 * @returns {Expression}
 */
export function compileExpression(json, lookup, intern) {
  return compile(json, lookup, (key, node) => {
    const atom = intern(key, node);
    return (values, truth) => truth[atom] === 1;
  });
}

function compile(json, lookup, atom) {
  if (json === true) return ALWAYS;
  if (json === false) return NEVER;
  if (json === null || typeof json !== 'object') throw new Error(`not a guard: ${JSON.stringify(json)}`);
  if ('var' in json) {
    const [variable, value] = lookup(json.var, json.is);
    return values => values[variable] === value;
  }
  if ('not' in json) return negate(compile(json.not, lookup, atom));
  if ('all' in json) return conjoin(json.all.map(part => compile(part, lookup, atom)));
  if ('any' in json) return disjoin(json.any.map(part => compile(part, lookup, atom)));
  const key = NETWORK_KEYS.find(name => name in json);
  if (key === undefined) throw new Error(`not a guard: ${JSON.stringify(json)}`);
  return atom(key, json);
}

function negate(part) {
  if (part === ALWAYS) return NEVER;
  if (part === NEVER) return ALWAYS;
  return (values, truth) => !part(values, truth);
}

function conjoin(parts) {
  if (parts.includes(NEVER)) return NEVER;
  const rest = parts.filter(part => part !== ALWAYS);
  if (rest.length === 0) return ALWAYS;
  if (rest.length === 1) return rest[0];
  return (values, truth) => {
    for (let i = 0; i < rest.length; i++) if (!rest[i](values, truth)) return false;
    return true;
  };
}

function disjoin(parts) {
  if (parts.includes(ALWAYS)) return ALWAYS;
  const rest = parts.filter(part => part !== NEVER);
  if (rest.length === 0) return NEVER;
  if (rest.length === 1) return rest[0];
  return (values, truth) => {
    for (let i = 0; i < rest.length; i++) if (rest[i](values, truth)) return true;
    return false;
  };
}

/** The variables a guard or expression names. @param {any} json @param {Set<string>} [into] @returns {Set<string>} */
export function variablesOf(json, into = new Set()) {
  if (json === null || typeof json !== 'object') return into;
  if ('var' in json) into.add(json.var);
  else if ('not' in json) variablesOf(json.not, into);
  else for (const part of json.all ?? json.any ?? []) variablesOf(part, into);
  return into;
}
