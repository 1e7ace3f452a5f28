import { decayDepth } from '../../../src/decay/decay-depth.ts';
import { medianDecayRate } from '../../../src/decay/decay-rate.ts';

const CLIMATE = { kind: 'measured', rainMmPerYear: 1600, meanTemperatureC: 19.5, dryMonths: 0 } as const;
const FENCES = Array.from({ length: 10 }, (_, index) => `RF-${index + 1}`);

/** Ten fences of the sample's gulf site, built in 2010, that all rot twice as fast as published. */
export const LEARNING_FILES = [
  {
    name: 'climate-zones.csv',
    text: 'ref,name,rain_mm,mean_temperature_c,dry_months,source\nGULF,Gulf coast,1600,19.5,0,invented\n',
  },
  {
    name: 'fences.csv',
    text: [
      'ref,site,owner,style,height_in,run_length_ft,post_spacing_ft,named_end,section,species,grade,treatment_class,installed',
      ...FENCES.map(
        (ref) => `${ref},PELICAN,HOA,solid-board,72,80,8,lane,4x4,southern-pine,no-2,ground-contact,2010-05-12`,
      ),
    ].join('\n'),
  },
  {
    name: 'inspections.csv',
    text: [
      'ref,fence,day,inspector,method',
      ...FENCES.map((ref) => `I-${ref},${ref},2026-05-12,Nell Fox,awl-or-probe`),
    ].join('\n'),
  },
  {
    name: 'readings.csv',
    text: [
      'inspection,post,depth_mm,sure',
      ...FENCES.flatMap((ref, index) =>
        [-0.4, 0, 0.4].map((scatter, post) => {
          const rate = 2 * medianDecayRate('ground-contact', CLIMATE) * Math.exp(scatter + 0.2 * Math.sin(index * 2.4));
          return `I-${ref},${post + 3},${Math.min(44, decayDepth(16, rate)).toFixed(2)},yes`;
        }),
      ),
    ].join('\n'),
  },
];
