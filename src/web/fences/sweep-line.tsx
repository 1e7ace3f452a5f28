import type { FC } from 'hono/jsx';
import type { ChartLanguage } from '../../drawing/chart-words.ts';
import type { SweepStatus } from '../../service/service-view.ts';
import { Moment } from '../frame/moment.tsx';

/** Fences that could not be computed which are named; the rest is counted. */
const FAILURES_NAMED = 3;

interface LineProps {
  readonly sweep: SweepStatus;
  /** Fences of the register. */
  readonly total: number;
  /** Time of day of the nightly sweep with its zone. */
  readonly nightly: string;
}

/** When the numbers were computed, when they will be again, and what could not be computed. */
export const SweepLine: FC<LineProps & { readonly language: ChartLanguage }> = ({ language, ...props }) =>
  language === 'es' ? <InSpanish {...props} /> : <InEnglish {...props} />;

const InEnglish: FC<LineProps> = ({ sweep, total, nightly }) => {
  const { progress, failures, nextAt } = sweep;
  const last = sweep.lastFinished?.finishedAt;
  if (progress) {
    return (
      <p class="muted">{`A sweep is at work: ${progress.done} of ${total} fences done. Load the page again to see more.`}</p>
    );
  }
  const named = failures.slice(0, FAILURES_NAMED).map(({ ref, message }) => `${ref} (${message})`);
  return (
    <p class="muted">
      {last ? (
        <>
          {'Swept '}
          <Moment at={last} />
          {'; the next sweep is due '}
        </>
      ) : (
        'Not swept yet; the first sweep is due '
      )}
      <Moment at={nextAt} />
      {` (every night at ${nightly}).`}
      {failures.length > 0 &&
        ` ${failures.length === 1 ? '1 fence' : `${failures.length} fences`} could not be forecast: ${named.join('; ')}${failures.length > FAILURES_NAMED ? ' and others' : ''}.`}
    </p>
  );
};

const InSpanish: FC<LineProps> = ({ sweep, total, nightly }) => {
  const { progress, failures, nextAt } = sweep;
  const last = sweep.lastFinished?.finishedAt;
  if (progress) {
    return (
      <p class="muted">{`Se está calculando: ${progress.done} de ${total} cercas listas. Vuelva a cargar la página para ver más.`}</p>
    );
  }
  return (
    <p class="muted">
      {last ? (
        <>
          {'Calculado '}
          <Moment at={last} />
          {'; el próximo cálculo: '}
        </>
      ) : (
        'Todavía sin calcular; el primer cálculo: '
      )}
      <Moment at={nextAt} />
      {` (cada noche a las ${nightly}).`}
      {failures.length > 0 &&
        ` ${failures.length === 1 ? '1 cerca no se pudo' : `${failures.length} cercas no se pudieron`} calcular.`}
    </p>
  );
};
