// Package assets holds the bytes that Pressworth carries with it: fonts with their licences. The drawings of garments
// are beside it in assets/drawing.
//
// Not in this package: any reading of fonts, anything that draws.
package assets
