import type { CrewMemberRecord } from '../crew-member-record.ts';
import type { DayOffRecord } from '../day-off-record.ts';
import type { ReplacedNames } from './import-checks.ts';
import type { ImportRow } from './import-row.ts';
import type { RegisterView } from './register-view.ts';
import { refuseUnknownRef } from './unknown-ref.ts';

/** Refuses a member of an unknown crew, or one who leaves the crew that stored days off have them in. */
export function checkCrewMember(
  row: ImportRow,
  member: CrewMemberRecord,
  view: RegisterView,
  replaced: ReplacedNames,
): boolean {
  if (refuseUnknownRef(row, 'crewRef', 'crews', member.crewRef, view)) return false;
  const left = [...view['days-off'].values()].find(
    ({ ref, memberRef, crewRef }) =>
      memberRef === member.ref && crewRef !== member.crewRef && !replaced.daysOff.has(ref),
  );
  if (!left) return true;
  const reason = `does not fit days off ${left.ref} in the register, which have ${member.ref} in crew ${left.crewRef}; change them in the same import`;
  row.refuseKey('crewRef', reason);
  return false;
}

/** Refuses days off of an unknown crew or member, or of somebody of another crew. */
export function checkDayOff(row: ImportRow, dayOff: DayOffRecord, view: RegisterView): boolean {
  const { crewRef, memberRef } = dayOff;
  if (refuseUnknownRef(row, 'crewRef', 'crews', crewRef, view)) return false;
  if (memberRef === null) return true;
  if (refuseUnknownRef(row, 'memberRef', 'crew-members', memberRef, view)) return false;
  const crewOfMember = view['crew-members'].get(memberRef)?.crewRef;
  if (crewOfMember === crewRef) return true;
  row.refuseKey('memberRef', `is in crew ${crewOfMember}, not in ${crewRef}; correct the crew or the member`);
  return false;
}
