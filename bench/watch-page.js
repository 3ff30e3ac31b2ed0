/** Runs in the page before the page does: notes when something is painted, on the page's own clock, from the event that asked for it. */
const fresh = (start) => ({ start, picture: null, checks: null, whole: null, mesh: null });
window.marks = fresh(0);
window.firstPicture = null;
window.pictures = 0;
let before = null;

/** The frame is on the screen when the task after it runs. */
function painted(then) {
  requestAnimationFrame(() => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => then(performance.now());
    port2.postMessage(null);
  });
}

function note(marks, key) {
  if (marks[key] !== null) return;
  marks[key] = Number.NaN;
  painted((at) => {
    marks[key] = at - marks.start;
  });
}

function begin(event) {
  window.marks = fresh(event.timeStamp);
  before = document.querySelector('#picture-section svg');
}
window.addEventListener('input', begin, true);
window.addEventListener('pointermove', (event) => event.buttons === 1 && begin(event), true);

new MutationObserver((changes) => {
  const now = document.querySelector('#picture-section svg');
  if (!now) return;
  if (window.firstPicture === null) {
    window.firstPicture = Number.NaN;
    painted((at) => {
      window.firstPicture = at;
    });
  }
  const { marks } = window;
  // The bodies may be there before the picture: each is worked out by itself.
  if (changes.some(({ attributeName }) => attributeName === 'data-bodies')) note(marks, 'mesh');
  if (now !== before && marks.picture === null) {
    window.pictures += 1;
    note(marks, 'picture');
  }
  if (marks.picture === null) return;
  // What is still being worked out: only the search, or nothing at all.
  const open = Number(document.querySelector('[aria-label="Verdict"]')?.dataset.open);
  if (open <= 1) note(marks, 'checks');
  if (open === 0) note(marks, 'whole');
}).observe(document, { subtree: true, childList: true, attributes: true, characterData: true });
