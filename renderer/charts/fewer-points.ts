/** A point of a course, and where it stands among all of them. */
export interface Placed<Point> {
  readonly point: Point;
  readonly place: number;
}

/**
 * Of more points than a drawing has columns, those that show: in each column the first, the lowest, the highest and the
 * last, in their order. Where there are no more points than columns, all of them.
 */
export function fewerPoints<Point extends { readonly value: number }>(
  points: readonly Point[],
  columns: number,
): Placed<Point>[] {
  const placed = (place: number): Placed<Point>[] => {
    const point = points[place];
    return point === undefined ? [] : [{ point, place }];
  };
  if (points.length <= columns) return points.flatMap((_, place) => placed(place));
  return Array.from({ length: columns }, (_, column) => endsOf(points, columnOf(points.length, columns, column)))
    .flat()
    .flatMap(placed);
}

interface Stretch {
  readonly from: number;
  readonly to: number;
}

function columnOf(points: number, columns: number, column: number): Stretch {
  const edge = (at: number): number => Math.round((at * points) / columns);
  return { from: edge(column), to: edge(column + 1) };
}

/** The places of the first, lowest, highest and last point of a stretch, in order, each once. */
function endsOf(points: readonly { readonly value: number }[], { from, to }: Stretch): number[] {
  let [lowest, highest] = [from, from];
  const valueAt = (place: number): number => points[place]?.value ?? 0;
  for (let place = from; place < to; place += 1) {
    if (valueAt(place) < valueAt(lowest)) lowest = place;
    if (valueAt(place) > valueAt(highest)) highest = place;
  }
  return [...new Set([from, lowest, highest, to - 1])].sort((one, other) => one - other);
}
