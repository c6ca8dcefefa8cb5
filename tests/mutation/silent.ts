/** Stands for the test runner in files of which only the checks are wanted: groups run, tests do not. */
type Body = (...args: never[]) => unknown;

const opened: Promise<string | undefined>[] = [];

/** Runs a group at once; how it ends is kept for {@link brokenGroups}. */
function open(name: string, body: Body, args: readonly unknown[]): void {
  const run = async () => body(...(args as never[]));
  opened.push(
    run().then(
      () => undefined,
      (reason) => `${name}: ${reason}`,
    ),
  );
}

/** What went wrong in the groups that files opened, once all have ended. */
export const brokenGroups = async (): Promise<string[]> =>
  (await Promise.all(opened)).filter((one) => one !== undefined);

export const describe = Object.assign((name: string, body: Body) => open(name, body, []), {
  each: (cases: readonly unknown[]) => (name: string, body: Body) => {
    for (const one of cases) open(name, body, Array.isArray(one) ? one : [one]);
  },
});
const none = () => {};
export const test = Object.assign(none, { each: () => none, runIf: () => Object.assign(none, { each: () => none }) });
const expected = () => {
  throw new Error('nothing is expected outside a test');
};
/** Patterns are made where cases are listed, and held against nothing. */
export const expect = Object.assign(expected, {
  stringMatching: String,
  stringContaining: String,
  objectContaining: none,
});
