/** Screws and how hard they are tightened: what is needed with the wrench in the hand, the one number first. */
import type { LiveView } from '../../core.ts';

export function ScrewTable({ screws }: { readonly screws: LiveView['report']['screws'] }) {
  return (
    <table class="answers screws">
      <tbody>
        {screws.map(({ count, what, detail, tighten, where }) => {
          const [first = '', ...rest] = tighten.split('; ');
          return (
            <tr key={`${what} ${where}`}>
              <th scope="row">
                {count} x {what}
                {detail ? <span class="class">{detail}</span> : null}
              </th>
              <td>
                {first ? (
                  <p>
                    <strong>{first}</strong>
                  </p>
                ) : null}
                <ul>
                  {[where, ...rest].filter(Boolean).map((line) => (
                    <li key={line}>{line}</li>
                  ))}
                </ul>
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
