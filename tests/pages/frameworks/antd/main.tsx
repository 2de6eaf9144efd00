/** @jsxImportSource react */
import { Checkbox, DatePicker, Form, Input, InputNumber, Radio, Select, Slider, Switch } from 'antd'
import type { Dayjs } from 'dayjs'
import { createRoot } from 'react-dom/client'

const zones = Array.from({ length: 300 }, (_, at) => ({ value: at + 1, label: `Zone ${at + 1}` }))

function Page() {
  const [form] = Form.useForm()
  window.pageState = () => {
    const { date, ...values } = form.getFieldsValue() as { date?: Dayjs }
    return { ...values, date: date?.format('YYYY-MM-DD') ?? '' }
  }
  return (
    <Form form={form} layout="vertical" initialValues={{ floors: 1 }} style={{ width: 420, padding: 20 }}>
      <Form.Item name="street" label="Street address">
        <Input />
      </Form.Item>
      <Form.Item name="flow" label="CFM50">
        <InputNumber<number>
          formatter={(value) => `${value ?? ''}`.replaceAll(/\B(?=(\d{3})+(?!\d))/g, ',')}
          parser={(text) => Number(text?.replaceAll(',', '') ?? '')}
        />
      </Form.Item>
      <Form.Item name="date" label="Test date">
        <DatePicker format="MM/DD/YYYY" />
      </Form.Item>
      <Form.Item name="range" label="Range">
        <Select
          options={[
            { value: 'a', label: 'wide range' },
            { value: 'b', label: 'middle range' },
          ]}
        />
      </Form.Item>
      <Form.Item name="places" label="Work locations">
        <Select
          mode="multiple"
          options={['Attic', 'Crawl space', 'Rim joist'].map((value) => ({ value, label: value }))}
        />
      </Form.Item>
      <Form.Item name="zone" label="Zone">
        <Select options={zones} />
      </Form.Item>
      <Form.Item name="result" label="Result">
        <Radio.Group options={['Pass', 'Fail']} />
      </Form.Item>
      <Form.Item name="sealed" valuePropName="checked">
        <Checkbox>Attic sealed</Checkbox>
      </Form.Item>
      <Form.Item name="fan" label="Ventilation present" valuePropName="checked">
        <Switch />
      </Form.Item>
      <Form.Item name="floors" label="Stories">
        <Slider min={1} max={4} />
      </Form.Item>
      <Form.Item name="comments" label="Comments">
        <Input.TextArea />
      </Form.Item>
    </Form>
  )
}

const root = document.createElement('main')
document.body.append(root)
createRoot(root).render(<Page />)
