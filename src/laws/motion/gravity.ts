/** The pull that falls are reckoned with. */

/** Standard gravity. @source falling-with-drag */
export const STANDARD_GRAVITY_m_per_s2 = 9.80665;
