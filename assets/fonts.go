package assets

import "embed"

// The family of the window and of every document: IBM Plex Sans (SIL Open Font License 1.1, fonts/plex-OFL.txt) as TrueType. Its figures
// are tabular.
var (
	//go:embed fonts/plex-regular.ttf
	PlexRegular []byte
	//go:embed fonts/plex-medium.ttf
	PlexMedium []byte
	//go:embed fonts/plex-semibold.ttf
	PlexSemibold []byte
)

//go:embed fonts/fallback/*.ttf
var fallback embed.FS

// Font is one font file.
type Font struct {
	Name string // of the family, without spaces
	Data []byte // TrueType
}

// fallbackOrder: the first that has a character draws it. Latin, Greek and Cyrillic beyond IBM Plex Sans come first, Han characters, kana and
// Hangul last, because the files that have them carry plainer shapes of other scripts as well.
var fallbackOrder = []string{
	"NotoSans", "NotoSansArabic", "NotoSansHebrew", "NotoSansDevanagari", "NotoSansBengali", "NotoSansGurmukhi",
	"NotoSansGujarati", "NotoSansOriya", "NotoSansTamil", "NotoSansTelugu", "NotoSansKannada", "NotoSansMalayalam",
	"NotoSansSinhala", "NotoSansThai", "NotoSansLao", "NotoSansKhmer", "NotoSansMyanmar", "NotoSerifTibetan",
	"NotoSansGeorgian", "NotoSansArmenian", "NotoSansEthiopic", "NotoSansSyriac", "NotoSansThaana", "NotoSansNKo",
	"NotoSansAdlam", "NotoSansTifinagh", "NotoSansCherokee", "NotoSansCanadianAboriginal", "NotoSansSymbols2",
	"DroidSansFallbackFull", "NanumGothic",
}

// Fallbacks returns the fonts for what the family lacks, in the order in which they are asked: Noto Sans for the scripts of the world
// (SIL Open Font License 1.1), Droid Sans Fallback for Chinese and Japanese (Apache License 2.0), Nanum Gothic for Korean (SIL Open Font License 1.1). The licences lie beside the files.
func Fallbacks() []Font {
	fonts := make([]Font, 0, len(fallbackOrder))
	for _, name := range fallbackOrder {
		data, err := fallback.ReadFile("fonts/fallback/" + name + ".ttf")
		if err != nil {
			panic(err) // embedded: a name that is not there is a mistake in the list above
		}
		fonts = append(fonts, Font{Name: name, Data: data})
	}
	return fonts
}
