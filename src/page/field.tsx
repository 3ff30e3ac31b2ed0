/** One quantity of the job: its name, what was typed, what stands there when nothing is, and what is wrong with it. */
import { useId } from 'preact/hooks';
import type { EditPath } from '../core.ts';
import type { JsonSchema } from './engine.ts';
import { errorAt, set, values } from './store.ts';

/** Words that a key may take; empty where any value may be typed. */
function choices(of: JsonSchema): readonly string[] {
  if (of.enum) return of.enum.map(String);
  const isFlag = of.type === 'boolean' || of.anyOf?.some(({ type }) => type === 'boolean');
  return isFlag ? ['true', 'false'] : [];
}

const plain = (key: string) => key.replaceAll('_', ' ');

/** What a key stands at when nothing is typed. */
const standing = ({ default: usual }: JsonSchema): string =>
  usual === undefined ? '' : typeof usual === 'object' ? '' : String(usual);

export function Field({ path, of, label }: { path: EditPath; of: JsonSchema; label?: string }) {
  const id = useId();
  const key = path.join('.');
  const typed = values.value[key] ?? '';
  const fault = errorAt.value.get(key);
  const words = choices(of);
  const name = label ?? plain(String(path.at(-1)));
  const usual = standing(of);
  const put = (value: string) => void set(path, value === '' ? null : value);
  const common = { id, 'aria-describedby': `${id}-about`, 'aria-invalid': fault !== undefined, name: key };
  return (
    <div class={`field${typed === '' ? ' open' : ''}${fault ? ' wrong' : ''}`}>
      <label for={id}>{name}</label>
      {words.length > 0 ? (
        <select {...common} value={typed} onChange={(event) => put(event.currentTarget.value)}>
          <option value="">{usual === '' ? 'not said' : usual}</option>
          {words.map((word) => (
            <option key={word} value={word}>
              {word}
            </option>
          ))}
        </select>
      ) : (
        <input
          {...common}
          type="text"
          value={typed}
          placeholder={usual || 'not said'}
          autocomplete="off"
          spellcheck={false}
          onChange={(event) => put(event.currentTarget.value)}
        />
      )}
      <p id={`${id}-about`} class="about">
        {fault ? <strong>{fault} </strong> : null}
        {of.description}
      </p>
    </div>
  );
}
