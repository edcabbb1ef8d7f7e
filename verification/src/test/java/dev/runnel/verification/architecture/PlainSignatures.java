package dev.runnel.verification.architecture;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaCodeUnit;
import com.tngtech.archunit.core.domain.JavaField;
import com.tngtech.archunit.core.domain.JavaMember;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.domain.JavaType;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.util.HashSet;
import java.util.Set;

/** What a caller can see names only types of the JDK and public types of Runnel. */
final class PlainSignatures extends ArchCondition<JavaClass> {
    private final String root;

    PlainSignatures(String root) {
        super("show only JDK and Runnel types");
        this.root = root;
    }

    @Override
    public void check(JavaClass type, ConditionEvents events) {
        if (!type.getModifiers().contains(JavaModifier.PUBLIC)) {
            return;
        }
        Set<JavaClass> heads = new HashSet<>(type.getAllRawSuperclasses());
        heads.addAll(type.getAllRawInterfaces());
        type.getInterfaces().forEach(parent -> heads.addAll(parent.getAllInvolvedRawTypes()));
        type.getSuperclass().ifPresent(parent -> heads.addAll(parent.getAllInvolvedRawTypes()));
        refuse(type, type.getName(), heads, events);
        for (JavaMember member : type.getMembers()) {
            if (isVisible(member)) {
                refuse(type, member.getFullName(), typesOf(member), events);
            }
        }
    }

    private static boolean isVisible(JavaMember member) {
        Set<JavaModifier> modifiers = member.getModifiers();
        return modifiers.contains(JavaModifier.PUBLIC) || modifiers.contains(JavaModifier.PROTECTED);
    }

    private static Set<JavaClass> typesOf(JavaMember member) {
        Set<JavaClass> types = new HashSet<>();
        if (member instanceof JavaField field) {
            types.addAll(field.getType().getAllInvolvedRawTypes());
        } else if (member instanceof JavaCodeUnit unit) {
            types.addAll(unit.getReturnType().getAllInvolvedRawTypes());
            for (JavaType parameter : unit.getParameterTypes()) {
                types.addAll(parameter.getAllInvolvedRawTypes());
            }
            types.addAll(unit.getExceptionTypes());
            unit.getTypeParameters().forEach(parameter -> types.addAll(parameter.getAllInvolvedRawTypes()));
        }
        return types;
    }

    private void refuse(JavaClass owner, String where, Set<JavaClass> seen, ConditionEvents events) {
        for (JavaClass type : seen) {
            JavaClass element = type.getBaseComponentType();
            if (!isAllowed(element)) {
                events.add(SimpleConditionEvent.violated(owner, where + " shows " + element.getName()));
            }
        }
    }

    private boolean isAllowed(JavaClass type) {
        String name = type.getPackageName();
        boolean ours = name.startsWith(root + ".") && !name.contains(".internal");
        return type.isPrimitive() || name.startsWith("java.") || name.startsWith("javax.") || ours;
    }
}
