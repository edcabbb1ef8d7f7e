package dev.runnel.internal;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.Chars;

class CellTextProperties {
    @Property
    void readsBackWhatItWrote(@ForAll @Chars({'\'', '=', '+', '-', '@', '\t', '1', '.', 'a', ' '}) String text) {
        assertThat(CellText.read(CellText.written(text))).isEqualTo(text);
    }

    @Property
    void noTextBeginsAsAFormulaDoes(@ForAll @Chars({'\'', '=', '+', '-', '@', '\t', 'a', ' '}) String text) {
        assertThat(CellText.written(text)).doesNotMatch("(?s)[=+@\\t-].*");
    }
}
