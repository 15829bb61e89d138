package money

import "strings"

// Currencies of ISO 4217 by the places of their minor unit. Codes from memory, places of the unusual ones as the
// standard's list has them (2 unless said otherwise).
const (
	places0 = "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF"
	places2 = "AED AFN ALL AMD ANG AOA ARS AUD AWG AZN BAM BBD BDT BGN BMD BND BOB BOV BRL BSD BTN BWP BYN BZD CAD CDF " +
		"CHE CHF CHW CNY COP COU CRC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD HKD HNL " +
		"HTG HUF IDR ILS INR IRR JMD KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR " +
		"MWK MXN MXV MYR MZN NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP " +
		"SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TOP TRY TTD TWD TZS UAH USD USN UYU UZS VED VES WST XCD XCG YER ZAR " +
		"ZMW ZWG"
	places3 = "BHD IQD JOD KWD LYD OMR TND"
	places4 = "CLF UYW"
)

// Places returns how many places the minor unit of an ISO 4217 currency has; false for an unknown code.
func Places(currency string) (int, bool) {
	for _, list := range []struct {
		codes  string
		places int
	}{{places2, 2}, {places0, 0}, {places3, 3}, {places4, 4}} {
		for c := range strings.FieldsSeq(list.codes) {
			if c == currency {
				return list.places, true
			}
		}
	}
	return 0, false
}
