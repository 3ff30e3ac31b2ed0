/** What shakes the shaft and what answers, as the order chart needs it: the tube's bending first, then the bracket. */
import type { OrderChartInput } from '../drawing/order-chart.ts';
import type { Joint } from '../job/joint.ts';
import { shaftOrders } from '../rotor/shaft-orders.ts';
import { bracketFrequencies } from '../validate/bracket-vibration.ts';

/** Null where the job describes no tube. */
export function ordersToDraw(joint: Joint): OrderChartInput | null {
  const orders = shaftOrders(joint);
  if (!orders) return null;
  const { bracket } = joint;
  const held = joint.job.bracket;
  const swings =
    bracket && held ? [{ name: 'bracket of the sensor', frequency: bracketFrequencies(bracket, held).lowest }] : [];
  return { id: 'orders', ...orders, levels: [...orders.levels, ...swings] };
}
