//! How the decoder hands values to serde: field by field, item by item, entry by entry.

use serde::de::value::{StrDeserializer, U8Deserializer, U32Deserializer};
use serde::de::{DeserializeSeed, Deserializer, EnumAccess, IntoDeserializer, MapAccess, SeqAccess, VariantAccess, Visitor};

use super::Mistake;
use super::slot::{Content, Slot};
use crate::source::field::{ABSENT, BROKEN, GIVEN};
use crate::source::yaml::Node;

/// Hands a field over in six parts: four offsets, what became of the value, the value. A mistake in the value is
/// reported here and ends here.
pub(super) struct FieldAccess<'de, 's> {
    slot: Slot<'de, 's>,
    parts: [u32; 4],
    state: u8,
    at: usize,
}

impl<'de, 's> FieldAccess<'de, 's> {
    pub(super) fn new(slot: Slot<'de, 's>, required: bool) -> Self {
        let (span, state) = match slot.content {
            Content::Node(node) => (node.span, GIVEN),
            Content::Broken(span) => (span, BROKEN),
            Content::Absent(span) if required => {
                slot.sink.report(slot.missing(span), span);
                (span, BROKEN)
            }
            Content::Absent(span) => (span, ABSENT),
        };
        let key = slot.key.unwrap_or(span);
        Self { slot, parts: [key.start, key.end, span.start, span.end], state, at: 0 }
    }
}

impl<'de> SeqAccess<'de> for FieldAccess<'de, '_> {
    type Error = Mistake;

    fn next_element_seed<T: DeserializeSeed<'de>>(&mut self, seed: T) -> Result<Option<T::Value>, Mistake> {
        let at = self.at;
        self.at += 1;
        if let Some(offset) = self.parts.get(at) {
            let number: U32Deserializer<Mistake> = (*offset).into_deserializer();
            return seed.deserialize(number).map(Some);
        }
        if at == self.parts.len() {
            let state: U8Deserializer<Mistake> = self.state.into_deserializer();
            return seed.deserialize(state).map(Some);
        }
        match seed.deserialize(self.slot) {
            Ok(value) => Ok(Some(value)),
            Err(mistake) => {
                if let Content::Node(node) = self.slot.content {
                    self.slot.sink.report(mistake, node.span);
                }
                Ok(None)
            }
        }
    }
}

/// Hands the items of a list over.
pub(super) struct ItemAccess<'de, 's, I> {
    items: I,
    list: Slot<'de, 's>,
}

impl<'de, 's, I> ItemAccess<'de, 's, I> {
    pub(super) const fn new(items: I, list: Slot<'de, 's>) -> Self {
        Self { items, list }
    }
}

impl<'de, I: Iterator<Item = &'de Node>> SeqAccess<'de> for ItemAccess<'de, '_, I> {
    type Error = Mistake;

    fn next_element_seed<T: DeserializeSeed<'de>>(&mut self, seed: T) -> Result<Option<T::Value>, Mistake> {
        let Some(node) = self.items.next() else { return Ok(None) };
        seed.deserialize(Slot { content: Content::Node(node), key: None, ..self.list }).map(Some)
    }
}

/// Hands the entries of a mapping over; which entries there are was settled before.
pub(super) struct EntryAccess<'de, 's> {
    slots: std::vec::IntoIter<Slot<'de, 's>>,
    value: Option<Slot<'de, 's>>,
}

impl<'de, 's> EntryAccess<'de, 's> {
    pub(super) fn new(slots: Vec<Slot<'de, 's>>) -> Self {
        Self { slots: slots.into_iter(), value: None }
    }
}

impl<'de> MapAccess<'de> for EntryAccess<'de, '_> {
    type Error = Mistake;

    fn next_key_seed<K: DeserializeSeed<'de>>(&mut self, seed: K) -> Result<Option<K::Value>, Mistake> {
        self.value = self.slots.next();
        self.value.map(|slot| seed.deserialize(StrDeserializer::new(slot.name))).transpose()
    }

    fn next_value_seed<T: DeserializeSeed<'de>>(&mut self, seed: T) -> Result<T::Value, Mistake> {
        self.value.take().map_or(Err(Mistake::Told), |slot| seed.deserialize(slot))
    }
}

/// Chooses a variant by the kind of the node.
pub(super) struct KindAccess<'de, 's> {
    pub(super) kind: &'static str,
    pub(super) slot: Slot<'de, 's>,
}

impl<'de, 's> EnumAccess<'de> for KindAccess<'de, 's> {
    type Error = Mistake;
    type Variant = Slot<'de, 's>;

    fn variant_seed<V: DeserializeSeed<'de>>(self, seed: V) -> Result<(V::Value, Slot<'de, 's>), Mistake> {
        Ok((seed.deserialize(StrDeserializer::<Mistake>::new(self.kind))?, self.slot))
    }
}

impl<'de> VariantAccess<'de> for Slot<'de, '_> {
    type Error = Mistake;

    fn unit_variant(self) -> Result<(), Mistake> {
        Ok(())
    }

    fn newtype_variant_seed<T: DeserializeSeed<'de>>(self, seed: T) -> Result<T::Value, Mistake> {
        seed.deserialize(self)
    }

    fn tuple_variant<V: Visitor<'de>>(self, _length: usize, visitor: V) -> Result<V::Value, Mistake> {
        self.deserialize_seq(visitor)
    }

    fn struct_variant<V: Visitor<'de>>(self, fields: &'static [&'static str], visitor: V) -> Result<V::Value, Mistake> {
        self.deserialize_struct("", fields, visitor)
    }
}
