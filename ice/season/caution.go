package season

// Caution stands with every printed result of this package.
const Caution = "Odds and dates for the diary only. They are no permission for anything on ice: drill, measure, and ask those who know this ice."
