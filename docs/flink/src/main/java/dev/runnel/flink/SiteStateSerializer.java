package dev.runnel.flink;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.apache.flink.api.common.typeutils.SimpleTypeSerializerSnapshot;
import org.apache.flink.api.common.typeutils.TypeSerializerSnapshot;
import org.apache.flink.api.common.typeutils.base.TypeSerializerSingleton;
import org.apache.flink.core.memory.DataInputView;
import org.apache.flink.core.memory.DataOutputView;

/**
 * Writes the state of a site: the version of this form, the text of the machine's state, five numbers. The text has its
 * own version, of which the rule takes care. Public only because Flink makes it anew when it reads a checkpoint.
 */
public final class SiteStateSerializer extends TypeSerializerSingleton<SiteState> {
    static final SiteStateSerializer INSTANCE = new SiteStateSerializer();

    private static final long serialVersionUID = 1;
    private static final int VERSION = 1;

    SiteStateSerializer() {}

    @Override
    public boolean isImmutableType() {
        return false;
    }

    @Override
    public SiteState createInstance() {
        return SiteState.begin();
    }

    @Override
    public SiteState copy(SiteState from) {
        return from.copy();
    }

    @Override
    public SiteState copy(SiteState from, SiteState reuse) {
        return from.copy();
    }

    @Override
    public int getLength() {
        return -1;
    }

    @Override
    public void serialize(SiteState state, DataOutputView target) throws IOException {
        byte[] text = state.text().getBytes(StandardCharsets.US_ASCII);
        target.writeByte(VERSION);
        target.writeInt(text.length);
        target.write(text);
        target.writeLong(state.taken);
        target.writeLong(state.newest);
        target.writeLong(state.earliest);
        target.writeLong(state.timer);
        target.writeLong(state.refused);
    }

    @Override
    public SiteState deserialize(DataInputView source) throws IOException {
        int version = source.readByte();
        if (version != VERSION) {
            throw new IOException("version of a site's state must be " + VERSION + ", was " + version);
        }
        byte[] text = new byte[source.readInt()];
        source.readFully(text);
        return new SiteState(
                new String(text, StandardCharsets.US_ASCII),
                source.readLong(),
                source.readLong(),
                source.readLong(),
                source.readLong(),
                source.readLong());
    }

    @Override
    public SiteState deserialize(SiteState reuse, DataInputView source) throws IOException {
        return deserialize(source);
    }

    @Override
    public void copy(DataInputView source, DataOutputView target) throws IOException {
        serialize(deserialize(source), target);
    }

    @Override
    public TypeSerializerSnapshot<SiteState> snapshotConfiguration() {
        return new Snapshot();
    }

    /** What Flink keeps of this serialiser beside a state. */
    public static final class Snapshot extends SimpleTypeSerializerSnapshot<SiteState> {
        /** Makes it. */
        public Snapshot() {
            super(() -> INSTANCE);
        }
    }
}
