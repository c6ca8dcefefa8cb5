/** ES modules and CommonJS of one installed package in one program: two classes of the error, each known by either copy. */
import assert from 'node:assert/strict';
import { createRequire } from 'node:module';
import { group } from '@airspring/core/driver';
import * as esm from '@airspring/core/fault';

const require = createRequire(import.meta.url);
const cjs = require('@airspring/core/fault');
const refusal = (call) => {
  try {
    call();
  } catch (error) {
    return error;
  }
  return undefined;
};
const errors = [refusal(() => group({})), refusal(() => require('@airspring/core/driver').group({}))];

assert.notEqual(esm.InputError, cjs.InputError);
assert.ok(errors[0] instanceof esm.InputError && errors[1] instanceof cjs.InputError);
for (const error of errors) for (const { isInputError } of [esm, cjs]) assert.ok(isInputError(error));
