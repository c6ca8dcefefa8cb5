/** A name was imported that the module does not have. */
export class MissingImport extends Error {
  constructor(
    readonly module: string,
    readonly imported: string,
    names: readonly string[],
  ) {
    super(`'${module}' has no '${imported}'. It has ${names.join(', ')}.`);
  }
}

/** A module that throws where a name is taken from it that it lacks: taken apart like a record, it would give `undefined`. */
export const checkedModule = (name: string, module: object): object =>
  new Proxy(
    { ...module },
    {
      get: (names, key) => {
        // `await` looks for a `then` in every value.
        if (typeof key === 'symbol' || key === 'then' || key in names) return Reflect.get(names, key);
        throw new MissingImport(name, key, Object.keys(names));
      },
    },
  );
