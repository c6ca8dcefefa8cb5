/** The editor, fetched when somebody edits. Colours are names of the style sheet: it follows light and dark. */
import { defaultKeymap, history, historyKeymap, indentWithTab } from '@codemirror/commands';
import { javascript } from '@codemirror/lang-javascript';
import { HighlightStyle, syntaxHighlighting } from '@codemirror/language';
import { type Diagnostic, lintGutter, setDiagnostics } from '@codemirror/lint';
import { EditorState } from '@codemirror/state';
import { Decoration, EditorView, keymap, lineNumbers, MatchDecorator, ViewPlugin } from '@codemirror/view';
import { tags } from '@lezer/highlight';
import type { Place } from './place.js';

export interface Editor {
  readonly text: () => string;
  readonly setText: (text: string) => void;
  readonly setFaults: (places: readonly Place[]) => void;
  readonly focus: () => void;
}

const inks = HighlightStyle.define([
  { tag: [tags.keyword, tags.operatorKeyword], color: 'var(--level)' },
  { tag: [tags.string, tags.special(tags.string)], color: 'var(--speed)' },
  { tag: [tags.number, tags.bool, tags.null], color: 'var(--travel)' },
  { tag: tags.comment, color: 'var(--soft)' },
  { tag: tags.punctuation, color: 'var(--soft)' },
]);
const look = EditorView.theme({
  '&.cm-focused': { outline: '3px solid var(--link)', outlineOffset: '3px' },
  '.cm-scroller': { fontFamily: 'var(--mono)', lineHeight: '1.6' },
  '.cm-content': { caretColor: 'var(--ink)' },
  '.cm-cursor': { borderLeftColor: 'var(--ink)' },
  '.cm-gutters': { background: 'var(--band)', color: 'var(--soft)', border: '0' },
  '.cm-selectionBackground, &.cm-focused .cm-selectionBackground': { background: 'var(--rule) !important' },
  '.cm-tooltip': { background: 'var(--paper)', color: 'var(--ink)', border: '1px solid var(--rule)' },
});

/** Keeps what matches on one line. */
function unbroken(regexp: RegExp) {
  const decorator = new MatchDecorator({ regexp, decoration: Decoration.mark({ class: 'pair' }) });
  return ViewPlugin.define(
    (view) => ({
      decorations: decorator.createDeco(view),
      update(update) {
        this.decorations = decorator.updateDeco(update, this.decorations);
      },
    }),
    { decorations: ({ decorations }) => decorations },
  );
}

export function editor(
  parent: HTMLElement,
  {
    text,
    label,
    changed,
    run,
    caret,
    whole,
  }: {
    text: string;
    label: string;
    changed: () => void;
    run: () => void;
    /** Told where the caret stands, when it moves. */
    caret?: (offset: number) => void;
    /** What a line is not broken within. */
    whole?: RegExp;
  },
): Editor {
  const view = new EditorView({
    parent,
    state: EditorState.create({
      doc: text,
      extensions: [
        lineNumbers(),
        history(),
        lintGutter(),
        EditorView.lineWrapping,
        javascript({ typescript: true }),
        syntaxHighlighting(inks),
        look,
        // Escape, then Tab, leaves the editor; said in its label.
        keymap.of([
          {
            key: 'Mod-Enter',
            run: () => {
              run();
              return true;
            },
          },
          ...defaultKeymap,
          ...historyKeymap,
          indentWithTab,
        ]),
        EditorView.contentAttributes.of({ 'aria-label': `${label}. Escape, then Tab, leaves the editor.` }),
        EditorView.updateListener.of(({ docChanged }) => docChanged && changed()),
        EditorView.updateListener.of(({ selectionSet, state }) => selectionSet && caret?.(state.selection.main.head)),
        whole ? unbroken(whole) : [],
      ],
    }),
  });
  return {
    text: () => view.state.doc.toString(),
    setText: (doc) => view.dispatch({ changes: { from: 0, to: view.state.doc.length, insert: doc } }),
    setFaults: (places) => {
      const { doc } = view.state;
      const diagnostics = places.flatMap(({ line, from, to, message }): Diagnostic[] => {
        if (line === undefined) return [];
        const at = doc.line(Math.max(1, Math.min(line, doc.lines)));
        const start = Math.min(from ?? at.from, doc.length);
        return [{ from: start, to: Math.min(Math.max(to ?? at.to, start), doc.length), severity: 'error', message }];
      });
      view.dispatch(setDiagnostics(view.state, diagnostics));
    },
    focus: () => view.focus(),
  };
}
