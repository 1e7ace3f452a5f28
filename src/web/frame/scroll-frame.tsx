import type { Child, FC } from 'hono/jsx';

/** A frame in which a wide table scrolls by itself, reachable by keyboard and named for readers of the text. */
export const ScrollFrame: FC<{ readonly label: string; readonly children?: Child }> = ({ label, children }) => (
  <section class="scroll" tabindex={0} aria-label={label}>
    {children}
  </section>
);
