import type { PostWood } from '../forecast/post-wood.ts';
import type { Works } from '../forecast/works.ts';
import { sectionFields } from './post-wood-record.ts';
import { WORKS_DETAIL_KEYS, type WorksDetailKey, type WorksRecord } from './works-record.ts';

type Details = Partial<Pick<WorksRecord, WorksDetailKey>>;

const woodDetails = ({ section, ...wood }: PostWood): Details => ({
  ...sectionFields(section),
  species: wood.species,
  grade: wood.grade,
  incised: wood.incised,
  treatmentClass: wood.treatmentClass,
  momentCapacityNm: wood.momentCapacityNm,
});

function detailsOf(works: Works): Details {
  switch (works.kind) {
    case 'groundline-treatment':
      return { yearsEffective: works.yearsEffective };
    case 'footing-reset': {
      const { embedmentM, footing, footingDiameterM } = works;
      return { embedmentM, footing, footingDiameterM };
    }
    case 'post-swap':
      return woodDetails(works.wood);
    case 'steel-sleeve':
      return { momentCapacityNm: works.momentCapacityNm };
    case 'added-posts':
      return { ...woodDetails(works.wood), positionsM: [...works.positionsM] };
    case 'rebuild':
      return { ...woodDetails(works.wood), postSpacingM: works.postSpacingM };
    case 'liner':
    case 'drainage':
    case 'trimmer-guard':
      return {};
  }
}

/** The record of works as the forecast takes them: `worksFacts` gives these again. */
export const worksRecord = (fenceRef: string, works: Works): WorksRecord => ({
  ...(Object.fromEntries(WORKS_DETAIL_KEYS.map((key) => [key, null])) as Pick<WorksRecord, WorksDetailKey>),
  ...detailsOf(works),
  ref: works.ref,
  fenceRef,
  day: works.day,
  kind: works.kind,
  posts: works.posts === 'all' ? 'all' : [...works.posts],
});
