import type { Corner, Drawing, Purpose, Shape } from './drawing.js';

/** Colours of the layers by number, as programs that cut show them. */
const colours: Readonly<Record<Purpose, number>> = { cut: 7, pocket: 5, inside: 3, drill: 1, centre: 8, note: 8 };
const MILLIMETRES = 1e3;

/**
 * A drawing as a DXF file in millimetres: a layer for each purpose, circles as circles, bends as arcs. Titles and lengths are left out.
 * The package that writes it is loaded at the first call.
 *
 * @validity drawings of boards
 * @source own derivation: the DXF format, by its maintained writer
 * @example await toDxf(pieceDrawing(box.pieces[0]))
 */
export async function toDxf({ shapes }: Drawing): Promise<string> {
  const { DxfWriter, LWPolylineFlags, point2d, point3d, Units } = await import('@tarikjabiri/dxf');
  const file = new DxfWriter();
  file.setUnits(Units.Millimeters);
  for (const [purpose, colour] of Object.entries(colours)) file.addLayer(purpose, colour, 'Continuous');
  const mm = (metres: number) => Number((metres * MILLIMETRES).toFixed(6));
  const vertex = ({ at: [x, y], bulge }: Corner) => ({
    point: point2d(mm(x), mm(y)),
    ...(bulge !== undefined && { bulge }),
  });
  const put = (shape: Shape): void => {
    const layerName = shape.purpose;
    if (shape.form === 'circle') {
      file.addCircle(point3d(mm(shape.centre[0]), mm(shape.centre[1]), 0), mm(shape.radius), { layerName });
      return;
    }
    const flags = shape.closed ? LWPolylineFlags.Closed : LWPolylineFlags.None;
    file.addLWPolyline(shape.corners.map(vertex), { flags, layerName });
  };
  shapes.forEach(put);
  return file.stringify();
}
