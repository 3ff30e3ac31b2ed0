/** Starts the page. */
import { render } from 'preact';
import { App } from './app.tsx';
import { begin, redo, undo } from './job/store.ts';

// First the job, then the page: it is drawn once.
begin();
const place = document.getElementById('page');
if (place) {
  place.replaceChildren();
  render(<App />, place);
}
// A field has its own undo while it is being typed in; elsewhere the keys take back steps of the job.
window.addEventListener('keydown', (event) => {
  const isTyping = event.target instanceof HTMLInputElement || event.target instanceof HTMLTextAreaElement;
  if (isTyping || !(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== 'z') return;
  event.preventDefault();
  if (event.shiftKey) redo();
  else undo();
});
