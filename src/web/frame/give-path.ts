/** Path of the page on which a fence of a visit is given another week. */
export const givePath = (uid: string, fenceRef: string, place?: { readonly week: string; readonly crewRef: string }) =>
  `/plan/give?${new URLSearchParams({ visit: uid, fence: fenceRef, ...(place ? { week: place.week, crew: place.crewRef } : {}) }).toString()}`;
