/** Modules that are made when the page is built: see `opened.ts`. */
declare module 'made:opened' {
  const opened: import('./answer/opened.ts').Opened;
  export default opened;
}
declare module 'made:first' {
  /** Read when it is asked for: who comes back to a job of his own has no use for it. */
  export default function firstAnswer(): import('./answer/engine.ts').Answer;
}
