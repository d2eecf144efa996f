package register

import "fmt"

// ISO/IEC 7064:2003, pure system MOD 97-10: modulus 97, radix 10, two check
// characters. A string of digits with its check digits leaves remainder 1.
const (
	checkModulus = 97
	checkRest    = 1
)

// checkDigits returns the two check digits of a string of decimal digits
// after ISO/IEC 7064 MOD 97-10.
func checkDigits(digits string) string {
	rest := remainder(digits + "00")
	return fmt.Sprintf("%02d", checkModulus+checkRest-rest)
}

// checkDigitsFit reports whether a string of decimal digits that ends in its
// check digits is valid. Zeros put in front are not noticed, which is why
// report numbers have a fixed length.
func checkDigitsFit(digits string) bool {
	return remainder(digits) == checkRest
}

// remainder returns the remainder of the decimal number modulo 97, digit by
// digit, so that its length does not matter.
func remainder(digits string) int {
	rest := 0
	for _, d := range []byte(digits) {
		rest = (rest*10 + int(d-'0')) % checkModulus
	}
	return rest
}
