/** Keeps the last result: text and pictures of a page ask for the same values within a frame. */
export function once<V extends object, R>(of: (values: V) => R): (values: V) => R {
  let last: { readonly values: V; readonly result: R } | undefined;
  return (values) => {
    if (last?.values !== values) last = { values, result: of(values) };
    return last.result;
  };
}
