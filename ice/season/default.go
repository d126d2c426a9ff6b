package season

// defaults is the set that Default returns. The numbers were searched within
// ranges of the literature for the least misfit on the first years of two lakes
// together (ice-on and ice-out of both, thickness and snow of one), then
// rounded.
var defaults = Params{
	Exchange: 28, WaterSun: 0.7, WaterLoss: 2, AirDays: 0.9, Mixing: 19, SkinPoint: -2.75, Frost: 9.4, FrostDays: 17,
	IceExchange: 20, WaterHeat: 1.1,
	Catch: 0.8, Snowfall: 1.5, SnowTrend: 0.03,
	NewDensity: 150, OldDensity: 380, NewConductivity: 0.22, OldConductivity: 0.46,
	Settle: 2.4, SettleTrend: 0.09, FreshTrend: 0.09, SlushSnow: 430, Bridge: 8,
	MeltExchange: 13, MeltLoss: 24, SnowSun: 0.164, IceSun: 0.28, Cover: 0.195, SunPower: 0.9, Rot: 0.3, Thinnest: 0.04,
}
