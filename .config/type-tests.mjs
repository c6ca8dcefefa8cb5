#!/usr/bin/env node
/**
 * What checks the tests of types: `tsc` for the files of one configuration alone. Of all that they import it works out no more
 * than they ask for; whether that is sound by itself is for `npm run types`.
 */
import ts from 'typescript';

const configuration = process.argv[process.argv.indexOf('-p') + 1];
const faults = [];
const host = { ...ts.sys, onUnRecoverableConfigFileDiagnostic: (fault) => faults.push(fault) };
const read = ts.getParsedCommandLineOfConfigFile(configuration, { noEmit: true }, host);
if (read) {
  const program = ts.createProgram(read.fileNames, read.options);
  faults.push(...read.errors, ...program.getOptionsDiagnostics(), ...program.getGlobalDiagnostics());
  for (const file of read.fileNames.map((name) => program.getSourceFile(name))) {
    faults.push(...program.getSyntacticDiagnostics(file), ...program.getSemanticDiagnostics(file));
  }
}
const paths = {
  getCurrentDirectory: ts.sys.getCurrentDirectory,
  getCanonicalFileName: (name) => name,
  getNewLine: () => '\n',
};
process.stdout.write(ts.formatDiagnostics(faults, paths));
process.exitCode = faults.length > 0 ? 1 : 0;
