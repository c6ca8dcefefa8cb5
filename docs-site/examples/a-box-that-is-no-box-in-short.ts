import { format } from '@airspring/core/quantity';
import { sizeForNetVolume } from '@airspring/core/space';
import { cuboidAround, openSize, wedge } from '@airspring/workshop/shape';

// Invented.
const driver = { displacedVolume: '1.2 L' } as const;
const contents = { driver, bracing: { volume: '0.4 L' } } as const;
const air = { netVolume: '30 L', contents } as const;
const thickness = '18 mm';

const section = wedge({ across: '400 mm', up: '340 mm', top: '150 mm' });
const found = openSize({
  box: (length) => ({
    along: 'width',
    outer: { ...section, length },
    thickness,
  }),
  from: '60 mm',
  to: '10 m',
  ...air,
});
if (found.ok) {
  const outer = cuboidAround(found.shape);
  const cuboid = sizeForNetVolume({
    ...air,
    outer,
    thickness,
    shape: 'width',
  });
  console.log(`a wedge of ${format('length', found.size, 'mm')}`);
  console.log(`a cuboid of ${format('length', cuboid.width, 'mm')}`);
}
