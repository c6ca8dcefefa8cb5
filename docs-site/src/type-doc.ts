import { type Application, Converter, PageEvent, type ParameterReflection, ReflectionKind } from 'typedoc';

/** Subpaths as people import them, and equations on lines of their own, as the reader of Markdown wants them. */
function asOurs(app: Application): void {
  app.converter.on(Converter.EVENT_RESOLVE_END, ({ project }) => {
    project.name = 'API';
    for (const module of project.getReflectionsByKind(ReflectionKind.Module)) {
      module.name = module.name.replace(/^core\/src\//, '').replace(/\/src$/, '');
    }
    // A parameter that is taken apart at once has no name of its own: its type names it.
    for (const parameter of project.getReflectionsByKind(ReflectionKind.Parameter)) {
      if (!parameter.name.startsWith('__namedParameters')) continue;
      const type = (parameter as ParameterReflection).type;
      const name = type?.type === 'reference' ? type.name : 'input';
      parameter.name = name.charAt(0).toLowerCase() + name.slice(1);
    }
  });
  app.renderer.on(PageEvent.END, (page) => {
    if (page.contents === undefined) return;
    page.contents = page.contents
      .replace(/^[ \t]*\$\$([^$]+)\$\$/gm, (_, tex: string) => `$$\n${tex.trim()}\n$$`)
      // A type and a function of one name share an anchor: the reader of Markdown numbers them in another way.
      .replace(/(\]\([^)\s]*#\w+)-\d+\)/g, '$1)');
  });
}

/** One page for each subpath of a package; the tags of our docstrings are known. */
export const typeDocOptions = {
  plugin: [asOurs],
  readme: 'none',
  entryFileName: 'overview',
  outputFileStrategy: 'modules' as const,
  useCodeBlocks: true,
  tableColumnSettings: { hideModifiers: true, hideInherited: true, hideOverrides: true, hideSources: true },
  interfacePropertiesFormat: 'table' as const,
  parametersFormat: 'table' as const,
  typeDeclarationFormat: 'table' as const,
  hideGroupHeadings: true,
  sort: ['source-order'] as 'source-order'[],
  disableSources: true,
  blockTags: [
    ...['@param', '@returns', '@throws', '@example', '@see', '@remarks', '@typeParam', '@template', '@defaultValue'],
    ...['@validity', '@neglects', '@source'],
  ] as `@${string}`[],
  validation: { invalidLink: false, notExported: false },
};
