package again

import (
	"math/big"
	"strings"
)

// prec is that of the references made here, in bits: 75 digits and more.
const prec = 256

// A num is a number of many digits. Its operations return new ones.
type num struct{ *big.Float }

func blank() *big.Float { return new(big.Float).SetPrec(prec) }

// of returns a float64 as it is.
func of(x float64) num { return num{blank().SetFloat64(x)} }

// dec returns a number as a source prints it: "0.822" is no float64.
func dec(text string) num {
	f, _, err := big.ParseFloat(strings.ReplaceAll(text, " ", ""), 10, prec, big.ToNearestEven)
	if err != nil {
		panic(err) // a slip in this file
	}
	return num{f}
}

func (a num) add(b num) num { return num{blank().Add(a.Float, b.Float)} }
func (a num) sub(b num) num { return num{blank().Sub(a.Float, b.Float)} }
func (a num) mul(b num) num { return num{blank().Mul(a.Float, b.Float)} }
func (a num) div(b num) num { return num{blank().Quo(a.Float, b.Float)} }
func (a num) sqrt() num     { return num{blank().Sqrt(a.Float)} }
func (a num) sq() num       { return a.mul(a) }

// product multiplies.
func product(all ...num) num {
	p := of(1)
	for _, x := range all {
		p = p.mul(x)
	}
	return p
}

// tiny reports whether a term no longer counts.
func (a num) tiny() bool { return a.Sign() == 0 || a.MantExp(nil) < -prec-8 }

// atan sums the series of Gregory, the argument halved until it is small.
func (a num) atan() num {
	halvings := 0
	for a.MantExp(nil) > -8 {
		a = a.div(of(1).add(of(1).add(a.sq()).sqrt()))
		halvings++
	}
	sum, power := a, a
	for n := 3.0; ; n += 2 {
		power = power.mul(a.sq())
		term := power.div(of(n))
		if term.tiny() {
			break
		}
		if int(n)%4 == 3 {
			sum = sum.sub(term)
		} else {
			sum = sum.add(term)
		}
	}
	for range halvings {
		sum = sum.add(sum)
	}
	return sum
}

// pi by Machin: 16 atan 1/5 - 4 atan 1/239.
var pi = of(16).mul(of(1).div(of(5)).atan()).sub(of(4).mul(of(1).div(of(239)).atan()))

// asin of an argument of less than 1 in size.
func (a num) asin() num { return a.div(of(1).sub(a.sq()).sqrt()).atan() }

// acos of an argument of less than 1 in size: twice the angle whose tangent is √((1-a)/(1+a)).
func (a num) acos() num { return of(2).mul(of(1).sub(a).div(of(1).add(a)).sqrt().atan()) }

// exp sums the series, the argument halved until it is small.
func (a num) exp() num {
	halvings := 0
	for a.MantExp(nil) > -8 {
		a = a.div(of(2))
		halvings++
	}
	sum, term := of(1), of(1)
	for n := 1.0; ; n++ {
		if term = term.mul(a).div(of(n)); term.tiny() {
			break
		}
		sum = sum.add(term)
	}
	for range halvings {
		sum = sum.sq()
	}
	return sum
}

// tanh of an argument of any sign.
func (a num) tanh() num {
	e := a.add(a).exp()
	return e.sub(of(1)).div(e.add(of(1)))
}
