-- A fence that is recorded dangerous and not dealt with comes before every other in "worst first", whatever it holds.

drop view worst_by_fence;

-- The lower, the worse; null until the fence is swept. Below 0: recorded dangerous and not settled. The whole part of the rest is the
-- per cent of the design gust that the fence still holds, as lists show it, 0 where the speed rounds to less than 5 mph, where
-- nothing sound is left to tell fences apart by. Fences of the same per cent come by what is at stake, the more the sooner:
-- what stands beside the fence by the loss stated for it, then the length of the run, by which a rebuild is priced.
create view worst_by_fence as
select
  fences.ref as ref,
  case when forecasts.snap_mps < 2.01168 then 0 else floor(100 * forecasts.snap_mps / forecasts.design_gust_mps) end
    + 1
    - case when exists (
        select 1 from office_notices
        where office_notices.fence_ref = fences.ref and settled_at is null and matter = 'dangerous'
      ) then 1e6 else 0 end
    - case fences.consequence
        when 'pool-barrier' then 0.4 when 'other-high' then 0.3 when 'over-footpath' then 0.2 when 'livestock' then 0.1 else 0 end
    - 0.099 * fences.run_length_m / (fences.run_length_m + 100) as worst
from fences left join forecasts on forecasts.fence_ref = fences.ref;

update fence_lines set worst = worst_by_fence.worst, tie = coalesce(worst_by_fence.worst, 1e9)
from worst_by_fence
where worst_by_fence.ref = fence_lines.ref
  and fence_lines.ref in (select fence_ref from office_notices where settled_at is null and matter = 'dangerous');
