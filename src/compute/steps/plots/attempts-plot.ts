/** The plot that a table of attempts has on its device's page. */
import type { Attempts } from '../../../register/register.ts';
import type { PlotRequest } from '../../../register/requests.ts';

export function attemptsPlot(attempts: Attempts): PlotRequest {
  return {
    kind: 'stability',
    id: `attempts-${attempts.id}`,
    runs: [],
    attempts: [{ alias: attempts.id, id: attempts.id }],
    channels: [],
    rise: false,
    place: attempts.placeOf('table'),
  };
}
